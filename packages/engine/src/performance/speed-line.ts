import {
  type FlightConditions,
  type FlightMode,
  type FlightPoint,
  type NotTrimmable,
  objective,
  startingStates,
  type TrimLimit,
  type Trimmed,
  type TrimOutcome,
  type TrimRotor,
  trimFrom,
  withLeftPropeller,
  withSearchedMargin,
} from "../equilibrium/index.ts";

/** One speed of a line: the better optimum, and the other one where the two ends of the line lead to different ones. */
export interface LinePoint<F extends { readonly kind: "trimmed" } = Trimmed, N extends NotFlown = NotFlown> {
  readonly airspeed: number;
  readonly outcome: F | N;
  /** A second local optimum, dearer by more than 0.5 %. */
  readonly other?: F;
}

/** A flight that was not found, with what stopped it. */
export interface NotFlown {
  readonly kind: "no-equilibrium" | "not-resolved";
  readonly limit: string;
  readonly family: TrimLimit["family"];
}

/** One speed of a line at the trim level `reduced`. */
export type ReducedPoint = LinePoint<Trimmed, NotTrimmable>;

export interface LineHooks {
  progress(done: number, total: number): void;
  cancelled(): void;
}

const distinct = 0.005;
/** A point this much dearer than the mean of its neighbours is tried again [1]. */
const bulge = 0.002;

/**
 * Trims a mode over speeds by continuation from both ends: each point starts from its neighbour below, then from its
 * neighbour above; where the two ends lead to different optima both are kept. A point that neither reaches is tried from
 * the archetypes. `speeds` ascending [m/s].
 */
export function speedLine(
  conditions: FlightConditions,
  mode: FlightMode,
  speeds: readonly number[],
  rotor: TrimRotor,
  hooks: LineHooks,
): ReducedPoint[] {
  const point = (airspeed: number): FlightPoint => ({ mode, forwardSpeed: airspeed, climbRate: 0 });
  const total = speeds.length * 2;
  const upward = upwardOutcomes(conditions, mode, speeds, rotor, hooks);
  // A glide has the archetypes instead of the way back.
  if (mode === "glide") {
    hooks.progress(total, total);
    return upward.map((outcome, i) => searched(conditions, { airspeed: speeds[i] as number, outcome }, rotor));
  }
  const line: ReducedPoint[] = new Array(speeds.length);
  let above: Trimmed | undefined;
  for (let i = speeds.length - 1; i >= 0; i--) {
    hooks.cancelled();
    const airspeed = speeds[i] as number;
    const first = upward[i] as TrimOutcome;
    // The way back starts from the archetypes: from the end of the way up it would only be the same way again.
    const starts = above ? [above.start] : first.kind === "trimmed" ? startingStates(conditions, point(airspeed), rotor) : [];
    const second = starts.length > 0 ? trimFrom(conditions, point(airspeed), rotor, starts, "table") : undefined;
    line[i] = better(airspeed, first, second);
    const kept = second?.kind === "trimmed" ? second : first;
    above = kept.kind === "trimmed" ? kept : undefined;
    hooks.progress(total - i, total);
  }
  repairLine(conditions, mode, line, rotor, hooks);
  return line.map((found) => searched(conditions, found, rotor));
}

/** A first picture of a line: from below only, stall margins from the table. */
export function coarseSpeedLine(
  conditions: FlightConditions,
  mode: FlightMode,
  speeds: readonly number[],
  rotor: TrimRotor,
  hooks: LineHooks,
): ReducedPoint[] {
  return upwardOutcomes(conditions, mode, speeds, rotor, hooks).map((outcome, i) => ({ airspeed: speeds[i] as number, outcome }));
}

function upwardOutcomes(
  conditions: FlightConditions,
  mode: FlightMode,
  speeds: readonly number[],
  rotor: TrimRotor,
  hooks: LineHooks,
): TrimOutcome[] {
  const upward: TrimOutcome[] = [];
  speeds.forEach((airspeed, i) => {
    hooks.cancelled();
    upward.push(fromBelow(conditions, { mode, forwardSpeed: airspeed, climbRate: 0 }, rotor, upward));
    hooks.progress(i + 1, speeds.length * 2);
  });
  return upward;
}

/** After a stretch that flies, so many refusals in a row are taken for its end. */
const refusalsToEnd = 3;

/**
 * From the neighbour below where it flies, and from every archetype where that fails: there may be another way to fly. Beyond
 * the end of a stretch only the nearest miss is followed.
 */
function fromBelow(conditions: FlightConditions, point: FlightPoint, rotor: TrimRotor, line: readonly TrimOutcome[]): TrimOutcome {
  const below = line[line.length - 1];
  const ended = line.length > refusalsToEnd && line.slice(-refusalsToEnd).every((outcome) => outcome.kind !== "trimmed");
  if (below && ended && line.some((outcome) => outcome.kind === "trimmed"))
    return trimFrom(conditions, point, rotor, [below.start], "table");
  const warm = below?.kind === "trimmed" ? trimFrom(conditions, point, rotor, [below.start], "table") : undefined;
  // A glide has a second optimum all along, with the disc at its flapping stop: the archetypes are asked every time.
  if (warm?.kind === "trimmed" && point.mode === "glide") {
    const cold = trimFrom(conditions, point, rotor, startingStates(conditions, point, rotor), "table");
    return cold.kind === "trimmed" && objective(cold) < objective(warm) ? cold : warm;
  }
  return warm?.kind === "trimmed" ? warm : trimFrom(conditions, point, rotor, startingStates(conditions, point, rotor), "table");
}

/** Below this airspeed the left propeller may push or pull: two optima on both sides of a kink [m/s]. */
const slowSpeed = 12;

/**
 * Tries again where a neighbour shows that something better exists: from the neighbours' vectors where a point costs more than
 * the straight line between them, and at low speed with the propeller that the rotor's torque unloads pulling, then pushing.
 */
function repairLine(conditions: FlightConditions, mode: FlightMode, line: ReducedPoint[], rotor: TrimRotor, hooks: LineHooks): void {
  line.forEach((point, i) => {
    if (point.outcome.kind !== "trimmed") return;
    hooks.cancelled();
    const neighbours = [line[i - 1]?.outcome, line[i + 1]?.outcome].flatMap((outcome) => (outcome?.kind === "trimmed" ? [outcome] : []));
    const around = neighbours.map((outcome) => outcome.start);
    const slow = mode === "clutch-closed" && point.airspeed < slowSpeed;
    const bulges =
      neighbours.length === 2 &&
      objective(point.outcome) > (neighbours.reduce((sum, outcome) => sum + objective(outcome), 0) / 2) * (1 + bulge);
    const tries: TrimOutcome[] = bulges ? [trimFrom(conditions, point.outcome.point, rotor, around, "table")] : [];
    if (slow) {
      const starts = [point.outcome.start, ...around.slice(-1)];
      for (const leftPropeller of ["pulls", "pushes"] as const) {
        const sided = { ...point.outcome.point, leftPropeller };
        tries.push(
          trimFrom(
            conditions,
            sided,
            rotor,
            starts.map((start) => withLeftPropeller(start, leftPropeller)),
            "table",
          ),
        );
      }
    }
    if (mode !== "glide" && wingStalls(conditions, point.outcome)) {
      tries.push(trimFrom(conditions, point.outcome.point, rotor, startingStates(conditions, point.outcome.point, rotor), "table"));
    }
    // What is dearer here may lie on a border that was only drawn for the search: it is no second optimum.
    for (const again of tries)
      line[i] = { ...(line[i] as ReducedPoint), outcome: better(point.airspeed, (line[i] as ReducedPoint).outcome, again).outcome };
  });
}

/** Fast flight behind a stalled wing neighbours on nothing better: it is followed from speed to speed unless asked otherwise [m/s]. */
const flyingWing = 10;

function wingStalls({ aircraft: { wing } }: FlightConditions, { evaluation, point }: Trimmed): boolean {
  const down = wing.rotorDownwashFactor * evaluation.rotor.inducedVelocity;
  const angle = evaluation.state.wingAngle - Math.atan2(down, point.forwardSpeed);
  const largest = (wing.maximumLiftCoefficient * wing.trimLiftFraction) / wing.liftSlope;
  return point.forwardSpeed > flyingWing && Math.abs(angle) > largest * 1.01;
}

/** The kept optimum with its stall margin searched exactly. */
function searched(conditions: FlightConditions, found: ReducedPoint, rotor: TrimRotor): ReducedPoint {
  return found.outcome.kind === "trimmed" ? { ...found, outcome: withSearchedMargin(conditions, found.outcome, rotor) } : found;
}

function better(airspeed: number, first: TrimOutcome, second: TrimOutcome | undefined): ReducedPoint {
  if (second?.kind !== "trimmed") return { airspeed, outcome: first };
  if (first.kind !== "trimmed") return { airspeed, outcome: second };
  const [keep, drop] = objective(second) < objective(first) * (1 - 1e-7) ? [second, first] : [first, second];
  return objective(drop) > objective(keep) * (1 + distinct) ? { airspeed, outcome: keep, other: drop } : { airspeed, outcome: keep };
}
