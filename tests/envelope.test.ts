// Where the demo flies: what more mass, warmer air, colder cells, a larger stall margin and the ground do to it; that a piece of the
// work does not depend on the others.
import { analyses, type Context } from "@wingseed/engine";
import { describe, expect, it } from "vitest";
import { demoView } from "./always-answer/demo-view.ts";

interface Place {
  readonly blocks: number;
  readonly altitude: number;
  readonly temperatureOffset: number;
}
interface Row extends Place {
  readonly mode: string;
  readonly airspeed: number;
  readonly state: string;
}
interface Outputs {
  readonly rows: readonly Row[];
  readonly borders: readonly (Place & {
    readonly mode: string;
    readonly side: string;
    readonly airspeed: number;
    readonly limit: string;
  })[];
  readonly climb: readonly (Place & { readonly airspeed: number; readonly climbRate: number | null })[];
  readonly ceilings: readonly (Omit<Place, "altitude"> & {
    readonly kind: string;
    readonly altitude: number | null;
    readonly limit: string | null;
  })[];
  readonly rotorSpeeds: readonly { readonly lowest: number; readonly highest: number; readonly lowestLimit: string }[];
  readonly groundEffect: { readonly thrustRatio: number };
  readonly solves: { readonly failed: number };
}

const envelope = analyses.find(({ name }) => name === "envelope");
if (!envelope) throw new Error("the registry has no envelope");
const view = await demoView();
const quiet = { progress: () => {}, cancelled: () => false, partial: () => {} } as unknown as Context<unknown>;

function asked(more: object, context = quiet): Outputs {
  const inputs = { packs: [13], altitudes: [0, 2000], speeds: [0, 12, 24, 33, 42], ceilingTemperatureOffsets: [], ...more };
  const outcome = envelope?.run(view, envelope.inputs.parse(inputs), context);
  if (!outcome?.outputs) throw new Error(outcome?.problem?.message);
  return outcome.outputs as Outputs;
}

const flying = ({ rows }: Outputs) => rows.filter(({ state }) => state === "flies").length;
const fastest = ({ borders }: Outputs) => Math.max(...borders.filter(({ side }) => side === "fastest").map(({ airspeed }) => airspeed));
const slowestFree = ({ borders }: Outputs) =>
  Math.min(...borders.filter(({ side, mode }) => side === "slowest" && mode === "clutch-open").map(({ airspeed }) => airspeed));
const ceiling = ({ ceilings }: Outputs, kind: string, day = 0) =>
  ceilings.find((row) => row.kind === kind && row.temperatureOffset === day)?.altitude ?? Number.NaN;

const usual = asked({ ceilingTemperatureOffsets: [-20, 20] });
/** Cells that hold their voltage, and the hub twice as far above the ground. */
const full = asked({ speeds: [0], altitudes: [0], stateOfCharge: 1, groundHeight: 2.3, ceilingTemperatureOffsets: [-20, 20] });

describe("the envelope of the demo", () => {
  it("shrinks with mass on every side", () => {
    const heavy = asked({ loading: { payloadMass: 4.5 } });
    expect(flying(heavy)).toBeLessThanOrEqual(flying(usual));
    expect(fastest(heavy)).toBeLessThan(fastest(usual));
    expect(slowestFree(heavy)).toBeGreaterThan(slowestFree(usual));
    for (const kind of ["hover", "service"]) expect(ceiling(heavy, kind), kind).toBeLessThan(ceiling(usual, kind));
    usual.climb.forEach(({ climbRate }, i) => {
      expect(heavy.climb[i]?.climbRate ?? 0).toBeLessThanOrEqual((climbRate ?? 0) + 0.02);
    });
  });

  it("ends lower on a warm day by what air carries, and on a cold one by what cold cells give at a low charge", () => {
    expect(ceiling(usual, "hover", 20)).toBeLessThan(ceiling(usual, "hover", 0));
    expect(ceiling(usual, "hover", -20)).toBeLessThan(ceiling(usual, "hover", 0));
    expect(usual.ceilings.find(({ kind, temperatureOffset }) => kind === "hover" && temperatureOffset === -20)?.limit).toBe("cell voltage");
    expect(ceiling(full, "hover", -20)).toBeGreaterThan(ceiling(full, "hover", 0));
    expect(ceiling(full, "hover", 0)).toBeGreaterThan(ceiling(full, "hover", 20));
  });

  it("reaches higher near the ground: 1.0667 in thrust at one radius, 1.0159 at two", () => {
    expect(usual.groundEffect.thrustRatio).toBeCloseTo(1.0667, 4);
    expect(full.groundEffect.thrustRatio).toBeCloseTo(1.0159, 4);
    for (const outputs of [usual, full]) expect(ceiling(outputs, "hover near the ground")).toBeGreaterThan(ceiling(outputs, "hover"));
    const gain = (outputs: Outputs) => ceiling(outputs, "hover near the ground", -20) - ceiling(outputs, "hover", -20);
    expect(gain(usual)).toBeGreaterThan(gain(full));
  });

  it("costs rotor speed at the low side and height when more stall margin is asked for", () => {
    const careful = asked({ stallMargin: 1.4 });
    expect(ceiling(careful, "hover")).toBeLessThan(ceiling(usual, "hover"));
    expect(careful.rotorSpeeds[0]?.lowest ?? 0).toBeGreaterThan(usual.rotorSpeeds[0]?.lowest ?? 0);
    expect(usual.rotorSpeeds[0]?.lowestLimit).toBe("stall margin");
  });

  it("is the same at one altitude whatever else is asked for", () => {
    const alone = asked({ altitudes: [2000] });
    const there = <Item extends Place>(items: readonly Item[]) => items.filter(({ altitude }) => altitude === 2000);
    expect(alone.rows).toEqual(there(usual.rows));
    expect(alone.borders).toEqual(there(usual.borders));
    expect(alone.climb).toEqual(there(usual.climb));
  });

  it("forbids by name what rules and air forbid", () => {
    const beyond = asked({ altitudes: [2600], speeds: [0] });
    expect(beyond.rows.map(({ state }) => state)).toEqual(["forbidden", "forbidden"]);
    expect(new Set((beyond.rows as readonly { readonly limit?: string }[]).map(({ limit }) => limit))).toEqual(new Set(["altitude limit"]));
    const frozen = asked({ altitudes: [0], speeds: [0], temperatureOffset: -30 });
    expect((frozen.rows[0] as { readonly limit?: string }).limit).toBe("coldest permitted air");
  });

  it("shows a coarse picture with its error first, and stops when nobody wants it", () => {
    const told: string[] = [];
    let left = 200;
    const context = {
      ...quiet,
      partial: (_: unknown, error: string) => told.push(error),
      cancelled: () => told.length > 0 && left-- < 0,
    } as unknown as Context<unknown>;
    expect(() => asked({ speeds: Array.from({ length: 46 }, (_, i) => i) }, context)).toThrow("cancelled");
    expect(told).toHaveLength(1);
    expect(told[0]).toContain("steps of up to 5 m/s");
  });
});
