import type { RotorQuestion } from "./givens.ts";
import type { RotorBench } from "./state.ts";
import type { FreeStream, RotorFlow } from "./stream.ts";

const degree = Math.PI / 180;
/** Advancing tip Mach number, advance ratio and airspeed [m/s] up to which a state is sought. */
const fastestTipMach = 0.9;
const largestAdvanceRatio = 1.2;
const largestAirspeed = 150;
/** Slowest tip speed looked at, over the speed of sound [1]. */
const slowestTipMach = 0.002;
const lowestCollective = -12 * degree;
const highestCollective = 40 * degree;
const collectiveStep = 1.5 * degree;

/** Collectives from low to the stall, or to 40 degrees where none was found [rad]. */
export function collectivePlaces(stall: number | undefined): readonly number[] {
  const end = stall ?? highestCollective;
  const places: number[] = [];
  for (let place = lowestCollective; place < end; place += collectiveStep) places.push(place);
  return [...places, end];
}

/** Tip speeds from the fastest down, those left out at which the stream is too fast for rotor or section [m/s]. */
export function tipSpeedPlaces(speedOfSound: number, flowAt: (tipSpeed: number) => RotorFlow, exact: boolean): readonly number[] {
  const step = exact ? 0.95 : 0.82;
  const usable = (tipSpeed: number): boolean => {
    const { airspeed, angle } = flowAt(tipSpeed);
    const inPlane = airspeed * Math.abs(Math.cos(angle.value));
    return tipSpeed + inPlane <= fastestTipMach * speedOfSound * (1 + 1e-12) && inPlane <= largestAdvanceRatio * tipSpeed;
  };
  const places: number[] = [];
  for (let place = fastestTipMach * speedOfSound; place > slowestTipMach * speedOfSound; place *= step) {
    if (usable(place)) places.push(place);
  }
  return places;
}

/** Where the open number of the stream is looked for, from climb to descent or from slow to fast. */
export function streamPlaces(bench: RotorBench, free: FreeStream, question: RotorQuestion): readonly number[] {
  const turnedByAir = question.torque !== undefined && question.torque.value <= 0;
  if (free === "angle") {
    const plain = question.tipSpeed !== undefined && question.collective !== undefined;
    return plain ? fineAngles(turnedByAir) : coarseAngles(turnedByAir);
  }
  const speeds = speedPlaces(bench, question);
  if (free !== "axial") return speeds;
  const climbing = turnedByAir
    ? []
    : speeds
        .filter((speed) => speed > 0)
        .map((speed) => -speed)
        .reverse();
  return [...climbing, ...speeds];
}

/** In fine steps where autorotation in level flight lies, wider towards vertical descent [rad]. */
function angles(turnedByAir: boolean, fine: number): readonly number[] {
  const places: number[] = [];
  let place = turnedByAir ? -16 : -88;
  while (place < 90) {
    places.push(place * degree);
    place += place < 24 && place > -24 ? fine : 2 + fine;
  }
  return [...places, Math.PI / 2];
}

export function fineAngles(turnedByAir: boolean): readonly number[] {
  return angles(turnedByAir, 1);
}

export function coarseAngles(turnedByAir: boolean): readonly number[] {
  return angles(turnedByAir, 4);
}

/** From standstill up: in steps of the tip speed where it is known, else wider ones of the induced velocity in hover [m/s]. */
function speedPlaces(bench: RotorBench, { tipSpeed, thrust }: RotorQuestion): readonly number[] {
  const area = Math.PI * bench.ws.model.radius ** 2;
  const hover = thrust && thrust.of !== "ct" ? Math.sqrt(thrust.value / (2 * bench.air.density * area)) : 0;
  const step = tipSpeed !== undefined ? tipSpeed / 100 : Math.max(hover / 5, 0.2);
  const [even, growth] = tipSpeed !== undefined ? [40, 1.08] : [15, 1.15];
  const places: number[] = [];
  for (let i = 0; i <= even; i++) places.push(i * step);
  for (let place = even * step * growth; place < largestAirspeed; place *= growth) places.push(place);
  const end = tipSpeed === undefined ? largestAirspeed : Math.min(largestAirspeed, largestAdvanceRatio * tipSpeed);
  return [...places.filter((place) => place < end), end];
}
