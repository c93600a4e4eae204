import type { Airframe } from "../../airframe/index.ts";
import {
  type ControlledFlight,
  controlStep,
  extremesOf,
  type FlightSample,
  type FlightTrace,
  goalOf,
  outsideBand,
  recoveryTime,
  usualBand,
} from "../../motion/index.ts";
import type { TransientOutputs } from "./output-schema.ts";
import { type PreparedStep, stepAt } from "./prepared-step.ts";

/** Rows of the course that are kept. */
const mostRows = 201;

/** What came of a flight through a step. */
export function transientOutputsOf(
  airframe: Airframe,
  { simulation }: ControlledFlight,
  step: PreparedStep,
  trace: FlightTrace,
): TransientOutputs {
  const { samples } = trace;
  const first = samples[0] as FlightSample;
  const last = samples[samples.length - 1] as FlightSample;
  const most = (value: (sample: FlightSample) => number) => extremesOf(samples, (sample) => Math.abs(value(sample))).highest;
  const load = extremesOf(samples, ({ loadFactor }) => loadFactor);
  const rotors = rotorRows(airframe, samples);
  const goal = step.goal ?? goalOf(first);
  const time = trace.stopped === undefined ? recoveryTime(samples, stepAt, goal) : null;
  const slack = usualBand.rotorRate;
  const turning = rotors.every(
    ({ end, permittedLowest, permittedHighest }) => end >= permittedLowest * (1 - slack) && end <= permittedHighest * (1 + slack),
  );
  const recovered = time !== null && turning;
  const there = recovered ? samples.find((sample) => sample.time >= stepAt + time) : undefined;
  return {
    step: step.words,
    stepAt,
    reaction: step.reaction,
    recovered,
    timeToRecover: recovered ? time : null,
    stopped: trace.stopped ?? null,
    notBack: recovered ? [] : [...outsideBand(last, goal), ...(turning ? [] : ["rotor speed beyond its limits"])],
    peakRoll: most(({ attitude }) => attitude.roll - first.attitude.roll),
    peakPitch: most(({ attitude }) => attitude.pitch - first.attitude.pitch),
    peakRate: most(({ rates: [p, q, r] }) => Math.max(Math.abs(p), Math.abs(q), Math.abs(r))),
    lowestLoadFactor: load.lowest,
    highestLoadFactor: load.highest,
    heightLost: first.place[2] - last.place[2],
    heightLostToRecovery: there ? first.place[2] - there.place[2] : null,
    sinkRateAtEnd: -last.climbRate,
    rotors,
    controls: controlRows(airframe, simulation, samples, last.time),
    energyGap: trace.energyGap,
    evaluations: trace.evaluations,
    samples: thinned(samples).map(row),
  };
}

function rotorRows(airframe: Airframe, samples: readonly FlightSample[]): TransientOutputs["rotors"] {
  return airframe.rotors.map(({ part }, i) => {
    const rate = ({ rotorRates }: FlightSample) => rotorRates[i] ?? 0;
    const { lowest, highest, lowestAt } = extremesOf(samples, rate);
    const first = samples[0] as FlightSample;
    const power = (first.rotorTorques[i] ?? 0) * rate(first);
    return {
      id: part.id,
      start: rate(first),
      lowest,
      lowestShare: lowest / rate(first),
      lowestAt,
      highest,
      end: rate(samples[samples.length - 1] as FlightSample),
      permittedLowest: part.tipSpeedMinimum / part.radius,
      permittedHighest: part.tipSpeedMaximum / part.radius,
      decay: power > 1 ? (part.polarInertia * rate(first) ** 2) / 2 / power : null,
    };
  });
}

function controlRows(
  airframe: Airframe,
  { actuators }: ControlledFlight["simulation"],
  samples: readonly FlightSample[],
  duration: number,
): TransientOutputs["controls"] {
  const steps = Math.max(1, duration / controlStep);
  return airframe.controls.flatMap(({ id, minimum, maximum, what }, i) => {
    const { lowest, highest } = extremesOf(samples, ({ controls }) => controls[i] ?? 0);
    const [atRate, atStop] = [(actuators.atRate[i] as number) / steps, (actuators.atStop[i] as number) / steps];
    if (what === "tip-speed" || (highest === lowest && atStop === 0)) return [];
    const [middle, half] = [(minimum + maximum) / 2, (maximum - minimum) / 2];
    const rangeUsed = half > 0 ? Math.max(Math.abs(lowest - middle), Math.abs(highest - middle)) / half : 1;
    return [{ id, lowest, highest, rangeUsed, atRate: Math.min(1, atRate), atStop: Math.min(1, atStop) }];
  });
}

function thinned(samples: readonly FlightSample[]): readonly FlightSample[] {
  const every = Math.max(1, Math.ceil((samples.length - 1) / (mostRows - 1)));
  return samples.filter((_, k) => k % every === 0 || k === samples.length - 1);
}

function row({
  time,
  airspeed,
  place,
  climbRate,
  attitude,
  loadFactor,
  rotorRates,
  driveTorques,
  electricPower,
}: FlightSample): TransientOutputs["samples"][number] {
  return {
    time,
    airspeed: Math.hypot(...airspeed),
    height: place[2],
    climbRate,
    roll: attitude.roll,
    pitch: attitude.pitch,
    yaw: attitude.yaw,
    loadFactor,
    rotorRate: rotorRates[0] ?? null,
    driveTorque: driveTorques[0] ?? null,
    electricPower,
  };
}
