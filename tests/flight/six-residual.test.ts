// Every six-component trim judged by code that is not the solver's.
import { describe, expect, test } from "vitest";
import { atmosphereAt } from "../../packages/engine/src/environment/atmosphere/index.ts";
import type { FullPoint, FullTrimmed, FullTrimmer } from "../../packages/engine/src/equilibrium/full/index.ts";
import { type DriveLine, plainDrive } from "./plain-drive.ts";
import type { PlainSum } from "./plain-six.ts";
import { demoTrimmer, judged } from "./six-trim.ts";

const tolerance = 1e-6;
const degree = Math.PI / 180;
const flight = (change: Partial<FullPoint>): FullPoint => ({ mode: "clutch-closed", airspeed: 0, climbRate: 0, sideslip: 0, ...change });

const flights: readonly FullPoint[] = [
  ...[0, 6, 12, 18, 24, 30].map((airspeed) => flight({ airspeed })),
  ...[16, 22, 28].map((airspeed) => flight({ airspeed, mode: "clutch-open" })),
  flight({ airspeed: 20, mode: "glide" }),
  flight({ airspeed: 6, sideslip: 90 * degree }),
  flight({ airspeed: 5, sideslip: Math.PI }),
  flight({ airspeed: 16, sideslip: 10 * degree }),
  flight({ airspeed: 12, climbRate: 1.5 }),
  flight({ airspeed: 14, climbRate: -1.5 }),
  flight({ airspeed: 16, turnRate: 0.2 }),
  flight({ airspeed: 20, turnRate: -0.15, mode: "clutch-open" }),
];

/** Slack by which a limit may be touched. */
const touch = 1e-6;

function keepsLimits(trimmer: FullTrimmer, trimmed: FullTrimmed, sum: PlainSum, where: string): void {
  const { aircraft, loading } = trimmer.conditions;
  const { controls, rotorStates } = trimmed.evaluation;
  const open = trimmed.point.mode !== "clutch-closed";
  aircraft.controls.forEach((control, i) => {
    const setting = (open ? control.clutchOpen : undefined) ?? control.setting;
    if (control.what === "tip-speed") return;
    const at = controls[i] as number;
    if (setting.kind === "fixed" || setting.kind === "ground-set") expect(at, `${where}: ${control.id}`).toBeCloseTo(setting.value, 9);
    else {
      expect(at, `${where}: ${control.id}`).toBeGreaterThan(setting.minimum - touch);
      expect(at, `${where}: ${control.id}`).toBeLessThan(setting.maximum + touch);
    }
  });
  aircraft.rotors.forEach((rotor, i) => {
    const [tipSpeed, , back, right] = rotorStates.subarray(5 * i) as unknown as readonly [number, number, number, number];
    expect(tipSpeed, where).toBeGreaterThan(rotor.tipSpeedMinimum - touch);
    expect(tipSpeed, where).toBeLessThan(rotor.tipSpeedMaximum + touch);
    expect(Math.hypot(back, right), where).toBeLessThan(rotor.flapRange + touch);
    if (!open) expect(sum.rotors[rotor.id]?.torque, where).toBeGreaterThan(-1e-6 * sum.mass.mass * 9.80665);
  });
  // At the voltage of an almost empty pack: 14 cells of 3.0 V.
  const emptyPack = aircraft.battery.seriesCells * aircraft.battery.cell.cutoffVoltage;
  const drawn = { total: 0 };
  for (const [i, line] of aircraft.driveLines.entries()) {
    const shaft = shaftOf(trimmed, sum, line, open);
    if (shaft === undefined) continue;
    const { electric, motor } = plainDrive(line, shaft.power, shaft.rate);
    drawn.total += electric;
    expect(trimmed.evaluation.loads.drives[i]?.electricPower, `${where}: ${line.id}`).toBeCloseTo(electric, 4);
    const limits = line.motors[0]?.motor;
    if (motor === undefined || limits === undefined) continue;
    expect(motor.electric / limits.continuousPower, `${where}: ${line.id}`).toBeLessThan(1 + touch);
    expect(motor.current / limits.currentMaximum, `${where}: ${line.id}`).toBeLessThan(1 + touch);
    expect(motor.voltage / (emptyPack * limits.controllerDutyMaximum), `${where}: ${line.id}`).toBeLessThan(1 + touch);
  }
  // 25 W of what stays on.
  expect(trimmed.evaluation.loads.electricPower, where).toBeCloseTo(drawn.total + 25, 3);
  expect((drawn.total + 25) / emptyPack / loading.blocks / aircraft.battery.continuousCurrent, where).toBeLessThan(1 + touch);
}

/** Power and rate at the end of a line; undefined where it stands still. */
function shaftOf(
  trimmed: FullTrimmed,
  sum: PlainSum,
  line: DriveLine,
  open: boolean,
): { readonly power: number; readonly rate: number } | undefined {
  if (trimmed.point.mode === "glide") return undefined;
  const propeller = sum.propellers[line.drives];
  if (propeller) return { power: propeller.shaftPower, rate: propeller.rotationRate };
  if (open) return undefined;
  const rate = (trimmed.evaluation.rotorStates[0] as number) / 1.15;
  return { power: (sum.rotors[line.drives]?.torque ?? Number.NaN) * rate, rate };
}

describe.each(["baseline", "revised"] as const)("six components of the %s aircraft", (name) => {
  test.each(["optimum", "schedule"] as const)("balance at %s within every limit, by another hand's sums", async (controls) => {
    const trimmer = await demoTrimmer(name, { controls, air: atmosphereAt({ altitude: 300, temperatureOffset: 0, relativeHumidity: 0 }) });
    let flown = 0;
    for (const point of flights) {
      const outcome = trimmer.trim(point);
      const where = `${name}, ${controls}, ${JSON.stringify(point)}`;
      if (outcome.kind !== "trimmed") {
        expect(outcome.kind, where).toBe("no-equilibrium");
        continue;
      }
      flown += 1;
      const { sum, unbalanced } = judged(trimmer, outcome);
      for (const [key, value] of Object.entries(unbalanced)) expect(Math.abs(value), `${where}: ${key}`).toBeLessThan(tolerance);
      keepsLimits(trimmer, outcome, sum, where);
    }
    expect(flown).toBeGreaterThan(flights.length - 3);
  });
});
