import { collectiveForThrust, largestSteadyThrust } from "../../aerodynamics/rotor/index.ts";
import type { RotorQuestion, ThrustWanted, TorqueWanted } from "./givens.ts";
import { polishedState, unstalled } from "./polish.ts";
import { type Root, type RootScan, rootsAlong } from "./roots.ts";
import { coarseAngles, collectivePlaces, streamPlaces, tipSpeedPlaces } from "./search-places.ts";
import type { NoRotorState, RotorBench, RotorState } from "./state.ts";
import type { FreeStream, GivenStream, RotorFlow } from "./stream.ts";

/** Coefficients of thrust and torque are met to this. */
const coefficientTolerance = 1e-11;
/** And to this, with few values and no slack, where an answer is put right afterwards. */
const near = { tolerance: 1e-6, refinements: 12, slack: 1 } as const;
/** The thrust of states on the way there. */
const nearThrust = 1e-7;
const degree = Math.PI / 180;
/** Lowest angle of the tip-path plane at which a disc that the air turns is looked for: below, it pulls forward. */
const lowestAutorotatingDisc = -1 * degree;

type Found = RotorState | NoRotorState;
type FreeStreamGiven = Extract<GivenStream, { readonly free: FreeStream }>;
type FlowAt = (tipSpeed: number) => RotorFlow;
type Missing = (state: RotorState) => number;

/**
 * The state that a question asks for; where several answer it, this one:
 *
 * - collective sought: the unstalled branch; at a given torque the highest collective at which torque still rises with it;
 * - rotor speed sought: the fastest;
 * - angle or axial speed sought: the first, going from climb to descent, where torque falls or thrust rises through the given value;
 *   for a driven rotor the first at all where there is none such;
 * - airspeed sought: the lowest.
 *
 * @derivation nested searches over `solveRotorInflowAndFlap`
 */
export function searchRotorState(bench: RotorBench, question: RotorQuestion): Found {
  if (unknownCount(question) < 2 && !scanned(bench, question)) return searched(bench, question);
  // Ring by ring a state costs many times as much: looked for with even inflow, then put right.
  const even = bench.ws.annular ? answerNear(bench, question, bench.withEvenInflow().roughly()) : undefined;
  if (even?.kind === "solved") return even;
  const rough = bench.roughly();
  const found = answerNear(bench, question, rough);
  bench.sweeps += rough.sweeps;
  return found ?? notStalled(bench, question, searched(bench, question));
}

/** Nested searches step widely over collective and can pass a narrow first maximum of thrust: what lies beyond it is no answer. */
function notStalled(bench: RotorBench, { collective }: RotorQuestion, found: Found): Found {
  if (found.kind !== "solved" || collective !== undefined || unstalled(bench, found)) return found;
  return { kind: "no-equilibrium", seek: "collective", reason: "the rotor meets what was given only where it is stalled" };
}

/** What another, rough bench finds, put right; why it finds nothing; undefined where it cannot be put right. */
function answerNear(bench: RotorBench, question: RotorQuestion, rough: RotorBench): Found | undefined {
  const found = searched(rough, question);
  return found.kind === "solved" ? polishedState(bench, question, found) : found;
}

/** Whether states are looked for ring by ring over many places of the stream or the rotor speed. */
function scanned(bench: RotorBench, { stream, tipSpeed }: RotorQuestion): boolean {
  return bench.ws.annular && (stream.free !== "nothing" || tipSpeed === undefined);
}

/** How many numbers are sought at once. */
function unknownCount({ stream, tipSpeed, collective }: RotorQuestion): number {
  const ofStream = { nothing: 0, "airspeed-and-angle": 2 }[stream.free as string] ?? 1;
  return ofStream + (tipSpeed === undefined ? 1 : 0) + (collective === undefined ? 1 : 0);
}

function searched(bench: RotorBench, question: RotorQuestion): Found {
  const { stream } = question;
  if (stream.free === "airspeed-and-angle") return airspeedAndAngle(bench, question);
  if (stream.free === "nothing") return inStream(bench, (tipSpeed) => stream.at(tipSpeed), question, true);
  return inFreeStream(bench, stream, question);
}

/** The stream is known; two of rotor speed, collective, thrust and torque are. */
function inStream(bench: RotorBench, flowAt: FlowAt, question: Omit<RotorQuestion, "stream">, exact: boolean): Found {
  const { tipSpeed, collective, thrust, torque } = question;
  if (tipSpeed !== undefined) {
    const flow = flowAt(tipSpeed);
    if (collective !== undefined) return bench.state(flow, tipSpeed, collective);
    if (thrust) return forThrust(bench, flow, tipSpeed, thrust, exact);
    if (torque) return forTorque(bench, flow, tipSpeed, torque);
  }
  if (collective !== undefined && thrust)
    return fastest(bench, flowAt, (tip) => bench.state(flowAt(tip), tip, collective), {
      missing: (state) => bench.thrustMissing(state, thrust),
      name: "thrust",
      either: thrust.of === "ct",
      exact,
    });
  if (collective !== undefined && torque)
    return fastest(bench, flowAt, (tip) => bench.state(flowAt(tip), tip, collective), {
      missing: (state) => bench.torqueMissing(state, torque),
      name: "torque",
      either: false,
      exact,
    });
  if (thrust && torque)
    return fastest(bench, flowAt, (tip) => forThrust(bench, flowAt(tip), tip, thrust, false), {
      missing: (state) => bench.torqueMissing(state, torque),
      name: "torque",
      either: false,
      exact,
    });
  throw new Error("the givens let a question pass that nothing answers");
}

function forThrust(bench: RotorBench, flow: RotorFlow, tipSpeed: number, wanted: ThrustWanted, exactLimit: boolean): Found {
  if (bench.spent) return { kind: "no-equilibrium", seek: "collective", reason: "the search was given up" };
  const condition = bench.condition(flow, tipSpeed);
  const scale = wanted.of === "ct" ? 1 : bench.force(tipSpeed);
  const value = wanted.value / scale;
  const found = collectiveForThrust(bench.ws, condition, {
    value,
    tolerance: bench.rough ? nearThrust : coefficientTolerance,
    of: (rotor) => value + bench.thrustMissing(bench.stateOf({ ...condition, collective: 0 }, rotor), wanted),
    exactLimit,
  });
  switch (found.kind) {
    case "found":
      return bench.stateOf({ ...condition, collective: found.collective }, found.rotor);
    case "unavailable":
      return { kind: "thrust-unavailable", largestThrust: found.largest * scale };
    case "below-range":
      return { kind: "thrust-below-range", smallestThrust: found.smallest * scale };
    case "no-search":
      return { kind: "no-equilibrium", seek: "collective", reason: found.reason };
  }
}

/** The highest unstalled collective at which torque rises through the wanted one; without one, the highest where it falls. */
function forTorque(bench: RotorBench, flow: RotorFlow, tipSpeed: number, wanted: TorqueWanted): Found {
  const largest = largestSteadyThrust(bench.ws, bench.condition(flow, tipSpeed));
  const scan = scanStates(
    bench,
    collectivePlaces(largest.kind === "found" ? largest.collective : undefined),
    (collective) => bench.state(flow, tipSpeed, collective),
    (state) => bench.torqueMissing(state, wanted),
  );
  const root = scan.roots.findLast((one) => one.rising) ?? scan.roots.at(-1);
  return root?.payload ?? nowhere(bench, "collective", "torque", wanted.value, scan);
}

interface Measure {
  readonly missing: Missing;
  readonly name: "thrust" | "torque";
  /** Whether a value that rises as the rotor slows counts as well. */
  readonly either: boolean;
  /** Whether this is the answer itself, not a step on the way. */
  readonly exact: boolean;
}

function fastest(bench: RotorBench, flowAt: FlowAt, at: (tipSpeed: number) => Found, { missing, name, either, exact }: Measure): Found {
  const places = tipSpeedPlaces(bench.air.speedOfSound, flowAt, exact);
  if (places.length === 0)
    return { kind: "no-equilibrium", seek: "rotor speed", reason: "the airspeed leaves no rotor speed below the limits" };
  const wanted = (root: Root<RotorState>): boolean => either || !root.rising;
  const scan = scanStates(bench, places, at, missing, wanted);
  return scan.roots.find(wanted)?.payload ?? nowhere(bench, "rotor speed", name, undefined, scan);
}

/**
 * One number of the stream is sought, three of rotor speed, collective, thrust and torque are known.
 *
 * With rotor speed sought too, each speed of the stream gets the rotor speed of the torque: in autorotation the thrust at a speed hardly
 * depends on it. At an angle it is the thrust that sets the rotor speed: there the torque hardly does.
 */
function inFreeStream(bench: RotorBench, stream: FreeStreamGiven, question: RotorQuestion): Found {
  const { torque, thrust, tipSpeed, collective } = question;
  const turnedByAir = torque !== undefined && torque.value <= 0;
  const byThrust = torque === undefined || (stream.free !== "angle" && tipSpeed === undefined && collective !== undefined);
  const inner = { ...question, ...(byThrust ? { thrust: undefined } : { torque: undefined }) };
  const at = (sought: number): Found => {
    const found = inStream(bench, (tip) => stream.at(tip, sought), inner, false);
    const forward = found.kind === "solved" && stream.free === "angle" && turnedByAir && found.rotor.discAngle < lowestAutorotatingDisc;
    return forward ? { kind: "no-equilibrium", seek: "shaft angle", reason: "the disc pulls forward" } : found;
  };
  const either = stream.free === "airspeed" || stream.free === "in-plane";
  const wanted = (root: Root<RotorState>): boolean => either || root.rising === byThrust;
  const missing: Missing = (state) => {
    if (byThrust) return thrust ? bench.thrustMissing(state, thrust) : Number.NaN;
    return torque ? bench.torqueMissing(state, torque) : Number.NaN;
  };
  const scan = scanStates(bench, streamPlaces(bench, stream.free, question), at, missing, wanted);
  const other = turnedByAir && !byThrust ? undefined : scan.roots[0];
  const held = byThrust ? undefined : torque?.value;
  return (
    (scan.roots.find(wanted) ?? other)?.payload ?? nowhere(bench, soughtNames[stream.free], byThrust ? "thrust" : "torque", held, scan)
  );
}

const soughtNames = { angle: "shaft angle", axial: "axial speed", airspeed: "airspeed", "in-plane": "airspeed" } as const;

/** Rotor speed, collective, thrust and torque are known: at each airspeed the angle for the torque, then the airspeed for the thrust. */
function airspeedAndAngle(bench: RotorBench, question: RotorQuestion): Found {
  const { thrust, torque, tipSpeed, collective } = question;
  if (!thrust || !torque || tipSpeed === undefined || collective === undefined) throw new Error("four givens are needed");
  const stays = (root: Root<RotorState>): boolean => !root.rising;
  const atAirspeed = (airspeed: number): Found => {
    const scan = scanStates(
      bench,
      coarseAngles(torque.value <= 0),
      (angle) => bench.state({ airspeed, angle: { of: "shaft", value: angle } }, tipSpeed, collective),
      (state) => bench.torqueMissing(state, torque),
      stays,
    );
    return scan.roots.find(stays)?.payload ?? nowhere(bench, "shaft angle", "torque", torque.value, scan);
  };
  const scan = scanStates(
    bench,
    streamPlaces(bench, "airspeed", question),
    atAirspeed,
    (state) => bench.thrustMissing(state, thrust),
    () => true,
  );
  return scan.roots[0]?.payload ?? nowhere(bench, "airspeed and shaft angle", "thrust", undefined, scan);
}

function scanStates(
  bench: RotorBench,
  places: readonly number[],
  at: (place: number) => Found,
  missing: Missing,
  enough?: (root: Root<RotorState>) => boolean,
): RootScan<RotorState> {
  return rootsAlong(
    places,
    (place) => {
      const found = at(place);
      return found.kind === "solved" ? { value: missing(found), payload: found } : undefined;
    },
    coefficientTolerance,
    enough,
    bench.rough ? near : { tolerance: coefficientTolerance },
  );
}

function nowhere(
  bench: RotorBench,
  seek: string,
  name: "thrust" | "torque",
  value: number | undefined,
  scan: RootScan<RotorState>,
): NoRotorState {
  const reason = bench.spent ? `the search was given up after ${bench.sweeps} sweeps` : reasonOf(name, value, scan);
  return { kind: "no-equilibrium", seek, reason };
}

function reasonOf(name: "thrust" | "torque", value: number | undefined, { solved, lowest, roots }: RootScan<RotorState>): string {
  if (solved === 0) return "the rotor stalls, or cannot be solved, at every place that was tried";
  if (name === "torque" && value === 0)
    return lowest > 0
      ? "the shaft has to drive this rotor at every place that was tried"
      : "wherever the rotor is not stalled the air already drives it faster";
  if (roots.length > 0) return `the ${name} meets the given one only on a branch that does not hold`;
  return lowest > 0 ? `the ${name} stays above the given one everywhere` : `the ${name} stays below the given one everywhere`;
}
