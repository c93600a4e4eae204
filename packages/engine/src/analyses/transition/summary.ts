import type { TransitionPlan, TransitionSample, TransitionTrace } from "../../motion/index.ts";
import type { WayOutputs, WaySummary } from "./output-schema.ts";
import type { SupplyMoment } from "./supply.ts";

const nearPeak = 0.95;

/** What one way comes to. */
export function waySummary(plan: TransitionPlan, trace: TransitionTrace, supply: readonly SupplyMoment[]): WaySummary {
  const { samples } = trace;
  const [start, end] = span(plan, samples);
  const first = plan.knots[0]?.trimmed.evaluation;
  const last = plan.knots.at(-1)?.trimmed.evaluation;
  const steadyPower = Math.max(first?.loads.electricPower ?? 0, last?.loads.electricPower ?? 0);
  const power = (sample: TransitionSample) => sample.loads.electricPower;
  const peak = samples.reduce((most, sample) => (power(sample) > power(most) ? sample : most));
  const final = samples.at(-1) as TransitionSample;
  const clutch = clutchMoment(trace);
  const radius = plan.rotors[0]?.radius ?? 0;
  const tipSpeeds = samples.map(({ rotorRates }) => (rotorRates[0] ?? 0) * radius);
  const heights = samples.map(({ height }) => height);
  const pitches = samples.map(({ pitch }) => pitch);
  return {
    duration: end.time - start.time,
    distance: end.distance - start.distance,
    heightGained: Math.max(...heights, 0),
    heightLost: Math.max(...heights.map((height) => -height), 0),
    peakPower: power(peak),
    peakTime: peak.time,
    peakAirspeed: peak.airspeed,
    peakDuration: stretchAround(samples, samples.indexOf(peak), (sample) => power(sample) >= nearPeak * power(peak)),
    steadyPower,
    timeAboveSteady: timeWhere(samples, (sample) => power(sample) > steadyPower * 1.001),
    clutchTime: clutch.time,
    clutchAirspeed: clutch.airspeed,
    clutchTorque: clutch.torque,
    clutchTipSpeed: clutch.tipSpeed * radius,
    slowestTipSpeed: Math.min(...tipSpeeds),
    fastestTipSpeed: Math.max(...tipSpeeds),
    largestPitch: Math.max(...pitches),
    smallestPitch: Math.min(...pitches),
    largestAcceleration: Math.max(...plan.knots.map(({ trimmed }) => Math.abs(trimmed.point.acceleration ?? 0))),
    endAirspeedError: final.airspeed - (last?.airspeed ?? 0),
    endPowerError: power(final) - (last?.loads.electricPower ?? 0),
    stateOfCharge: supply.at(-1)?.stateOfCharge ?? 0,
  };
}

/** From the end of the first hold to the beginning of the last. */
function span(plan: TransitionPlan, samples: readonly TransitionSample[]): readonly [TransitionSample, TransitionSample] {
  const start = samples.find(({ phase }) => phase !== "hold") ?? samples[0];
  const end = samples.find(({ phase }) => phase === "settle") ?? samples.at(-1);
  if (!start || !end) throw new RangeError(`a history of ${plan.way} without a moment has no span`);
  return [start, end];
}

/** When the motor comes to rest; on the way back, when it first gives torque. */
function clutchMoment({ plan, samples, switched }: TransitionTrace): { time: number; airspeed: number; torque: number; tipSpeed: number } {
  const open = plan.way === "hover to cruise";
  const at =
    samples.find(({ time, clutch }) => (open ? switched !== undefined && time >= switched.time : clutch === "closed")) ?? samples.at(-1);
  const tipSpeed = at?.rotorRates[0] ?? 0;
  if (open && switched) return { ...switched, tipSpeed };
  return { time: at?.time ?? 0, airspeed: at?.airspeed ?? 0, torque: at?.driveTorques[0] ?? 0, tipSpeed };
}

function timeWhere(samples: readonly TransitionSample[], holds: (sample: TransitionSample) => boolean): number {
  return samples.reduce((sum, sample, i) => sum + (holds(sample) ? (samples[i + 1]?.time ?? sample.time) - sample.time : 0), 0);
}

function stretchAround(samples: readonly TransitionSample[], index: number, holds: (sample: TransitionSample) => boolean): number {
  let [from, to] = [index, index];
  while (from > 0 && holds(samples[from - 1] as TransitionSample)) from -= 1;
  while (to < samples.length - 1 && holds(samples[to + 1] as TransitionSample)) to += 1;
  return (samples[to]?.time ?? 0) - (samples[from]?.time ?? 0);
}

/** Where the energy of a flight went. */
export function energyOutputs({ energy: [before, after], energyGap }: TransitionTrace): NonNullable<WayOutputs["energy"]> {
  return {
    kinetic: after.kinetic - before.kinetic,
    height: after.height - before.height,
    rotors: after.rotors - before.rotors,
    airframeWork: after.airframeWork - before.airframeWork,
    shaftWork: after.shaftWork - before.shaftWork,
    driveWork: after.driveWork - before.driveWork,
    electricEnergy: after.electricEnergy - before.electricEnergy,
    gap: energyGap,
  };
}
