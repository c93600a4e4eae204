import type { Airframe } from "../../airframe/index.ts";
import { rotorStateWidth } from "../../airframe/index.ts";
import { type PlanKnot, referenceAt, type TransitionPlan, type TransitionSample } from "../../motion/index.ts";
import type { HistoryRow } from "./output-schema.ts";
import type { SupplyMoment } from "./supply.ts";

/** Moments of a flight as rows, every so many, with the first and the last. */
export function historyRows(
  airframe: Airframe,
  samples: readonly TransitionSample[],
  supply: readonly SupplyMoment[],
  every: number,
): HistoryRow[] {
  return samples.flatMap((sample, k) => {
    const moment = supply[k];
    if (!moment || (k % every !== 0 && k !== samples.length - 1)) return [];
    return [historyRow(airframe, sample, moment)];
  });
}

function historyRow(airframe: Airframe, sample: TransitionSample, moment: SupplyMoment): HistoryRow {
  const { loads } = sample;
  const rotor = loads.rotors[0];
  const rate = sample.rotorRates[0] ?? 0;
  const driveTorque = sample.driveTorques[0] ?? 0;
  const collective = airframe.rotors.length > 0 ? airframe.collectiveControl(0) : -1;
  return {
    time: sample.time,
    phase: sample.phase,
    clutch: sample.clutch,
    airspeed: sample.airspeed,
    wantedAirspeed: sample.wantedAirspeed,
    height: sample.height,
    distance: sample.distance,
    aside: sample.aside,
    pitch: sample.pitch,
    roll: sample.roll,
    tipSpeed: rate * (airframe.rotors[0]?.part.radius ?? 0),
    rotorThrust: rotor?.thrust ?? 0,
    rotorTorque: rotor?.torque ?? 0,
    driveTorque,
    rotorPower: driveTorque * rate,
    collective: collective < 0 ? null : (sample.controls[collective] ?? null),
    thrusts: loads.propellers.map(({ thrust }) => thrust),
    drivePowers: loads.drives.map(({ electricPower }) => electricPower),
    electricPower: loads.electricPower,
    trimmedPower: sample.trimmedPower,
    blockCurrent: moment.blockCurrent,
    packVoltage: moment.voltage,
    stateOfCharge: moment.stateOfCharge,
    windings: [...moment.windings],
  };
}

/** The trims of a reference as if they were flown: quasi-steady, without the motion between them. */
export function plannedSamples(plan: TransitionPlan): TransitionSample[] {
  let distance = 0;
  let before: PlanKnot | undefined;
  return plan.knots.map((knot, i) => {
    const { evaluation, point } = knot.trimmed;
    if (before) distance += ((evaluation.airspeed + before.trimmed.evaluation.airspeed) / 2) * (knot.time - before.time);
    before = knot;
    const next = plan.knots[i + 1];
    const open = point.mode !== "clutch-closed";
    const at = (rotor: number, entry: number) => evaluation.rotorStates[rotor * rotorStateWidth + entry] ?? 0;
    return {
      time: knot.time,
      phase: (next ?? knot).phase,
      airspeed: evaluation.airspeed,
      wantedAirspeed: referenceAt(plan, knot.time).state.airspeed,
      height: 0,
      distance,
      aside: 0,
      pitch: evaluation.pitch,
      roll: evaluation.roll,
      heading: 0,
      clutch: open ? "open" : "closed",
      rotorRates: plan.rotors.map(({ radius }, rotor) => at(rotor, 0) / radius),
      driveTorques: evaluation.loads.rotors.map(({ torque }) => (open ? 0 : torque)),
      flapping: plan.rotors.map((_, rotor) => Math.hypot(at(rotor, 2), at(rotor, 3))),
      controls: evaluation.controls,
      loads: evaluation.loads,
      trimmedPower: evaluation.loads.electricPower,
    };
  });
}
