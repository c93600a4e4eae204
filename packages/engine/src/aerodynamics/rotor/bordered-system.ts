import { solveLinearInPlace } from "../../numerics/index.ts";

/**
 * Members that know of each other only by a few shared unknowns and by the sum of what they do.
 *
 * A member answers to the shared unknowns and its own: first with what is left over of its own balances, as many as it has unknowns,
 * then with its loads. What is left over of the shared balances is that of the sums of loads.
 */
export interface BorderedSystem {
  readonly sharedCount: number;
  readonly memberCount: number;
  readonly ownCount: number;
  readonly loadCount: number;
  /** Writes the answers, member after member, and what is left over of the shared balances. */
  evaluate(shared: Float64Array, own: Float64Array, answers: Float64Array, balances: Float64Array): void;
  /** Slopes of the shared balances over the shared unknowns with loads held, row by row: the balances are straight in them. */
  readonly sharedSlopes: Float64Array;
  /** Slopes of the shared balances over each load of each member, [member][balance][load]. */
  readonly loadSlopes: Float64Array;
  /** Largest change of each shared unknown in one step; a longer step is shortened as a whole. */
  readonly largestSteps: readonly number[];
  readonly tolerance: number;
  readonly largestEvaluationCount: number;
}

/** Where a search starts or has ended. */
export interface BorderedPlace {
  readonly shared: Float64Array;
  /** Member after member. */
  readonly own: Float64Array;
  /** Slopes of the members' answers, [member][answer][shared unknowns, own unknowns]. */
  readonly slopes: Float64Array;
}

const differenceStep = 1e-6;

/**
 * Newton's steps of the whole system with the members' own unknowns eliminated. Every evaluation renews the slopes of every member by a
 * secant of its own, in its few unknowns: one evaluation a step, and as much learnt from it as there are members.
 *
 * The last evaluation is at the place that is returned. Undefined where it does not converge.
 *
 * @source broyden-1965, the update, unchecked
 * @derivation elimination member by member; the update applied to each member in its own unknowns
 */
export function solveBorderedSystem(system: BorderedSystem, start: BorderedPlace): BorderedPlace | undefined {
  const { sharedCount, memberCount, ownCount, loadCount } = system;
  const place = { shared: start.shared.slice(), own: start.own.slice(), slopes: start.slopes.slice() };
  const answers = new Float64Array(memberCount * (ownCount + loadCount));
  const before = new Float64Array(answers.length);
  const balances = new Float64Array(sharedCount);
  const step = { shared: new Float64Array(sharedCount), own: new Float64Array(place.own.length), ownMiss: 0 };
  for (let evaluation = 1; evaluation <= system.largestEvaluationCount; evaluation++) {
    before.set(answers);
    system.evaluate(place.shared, place.own, answers, balances);
    if (!answers.every(Number.isFinite) || !balances.every(Number.isFinite)) return undefined;
    if (evaluation > 1) renewSlopes(system, place.slopes, step, before, answers);
    if (!findStep(system, place.slopes, answers, balances, step)) return undefined;
    if (Math.max(step.ownMiss, ...balances.map(Math.abs)) <= system.tolerance) return place;
    add(place.shared, step.shared);
    add(place.own, step.own);
  }
  return undefined;
}

/** Slopes of all members at a place by differences: one evaluation, and one more for each unknown that a member knows of. */
export function measuredSlopes(system: BorderedSystem, shared: Float64Array, own: Float64Array): Float64Array {
  const { sharedCount, memberCount, ownCount, loadCount } = system;
  const answerCount = ownCount + loadCount;
  const unknownCount = sharedCount + ownCount;
  const at = new Float64Array(memberCount * answerCount);
  const moved = new Float64Array(at.length);
  const balances = new Float64Array(sharedCount);
  const slopes = new Float64Array(at.length * unknownCount);
  system.evaluate(shared, own, at, balances);
  for (let column = 0; column < unknownCount; column++) {
    const movedShared = shared.map((value, i) => (i === column ? value + differenceStep : value));
    const movedOwn = own.map((value, i) => (sharedCount + (i % ownCount) === column ? value + differenceStep : value));
    system.evaluate(movedShared, movedOwn, moved, balances);
    for (let row = 0; row < at.length; row++) {
      slopes[row * unknownCount + column] = ((moved[row] as number) - (at[row] as number)) / differenceStep;
    }
  }
  system.evaluate(shared, own, at, balances);
  return slopes;
}

interface Step {
  readonly shared: Float64Array;
  readonly own: Float64Array;
  /** How far any own unknown is from its member's balance, the shared unknowns held. */
  ownMiss: number;
}

/** The step that ends all balances if slopes hold; false where they are singular. */
function findStep(system: BorderedSystem, slopes: Float64Array, answers: Float64Array, balances: Float64Array, step: Step): boolean {
  const { sharedCount, memberCount, ownCount, largestSteps } = system;
  const matrix = system.sharedSlopes.slice();
  for (let row = 0; row < sharedCount; row++) step.shared[row] = -(balances[row] as number);
  // What each own unknown does by itself, and with each of the shared ones: [member][own unknown][alone, shared unknowns].
  const followed = new Float64Array(memberCount * ownCount * (1 + sharedCount));
  step.ownMiss = 0;
  for (let member = 0; member < memberCount; member++) {
    if (!follow(system, slopes, answers, member, followed)) return false;
    for (let k = 0; k < ownCount; k++) {
      step.ownMiss = Math.max(step.ownMiss, Math.abs(followed[(member * ownCount + k) * (1 + sharedCount)] as number));
    }
    addMember(system, slopes, member, followed, matrix, step.shared);
  }
  if (!solveLinearInPlace(matrix, step.shared, sharedCount)) return false;
  let share = 1;
  for (let i = 0; i < sharedCount; i++) share = Math.min(share, (largestSteps[i] as number) / Math.abs(step.shared[i] as number));
  if (!(share > 0)) return false;
  for (let i = 0; i < sharedCount; i++) step.shared[i] = share * (step.shared[i] as number);
  for (let k = 0; k < step.own.length; k++) {
    let move = followed[k * (1 + sharedCount)] as number;
    for (let i = 0; i < sharedCount; i++) move += (followed[k * (1 + sharedCount) + 1 + i] as number) * (step.shared[i] as number);
    step.own[k] = move;
  }
  return true;
}

/** How a member's own unknowns have to move: to end its balances, and with the shared unknowns. False where its slopes are singular. */
function follow(
  { sharedCount, ownCount, loadCount }: BorderedSystem,
  slopes: Float64Array,
  answers: Float64Array,
  member: number,
  followed: Float64Array,
): boolean {
  const width = sharedCount + ownCount;
  const first = member * (ownCount + loadCount);
  for (let column = 0; column <= sharedCount; column++) {
    const matrix = new Float64Array(ownCount * ownCount);
    const move = new Float64Array(ownCount);
    for (let row = 0; row < ownCount; row++) {
      const at = (first + row) * width;
      move[row] = -(column === 0 ? (answers[first + row] as number) : (slopes[at + column - 1] as number));
      for (let k = 0; k < ownCount; k++) matrix[row * ownCount + k] = slopes[at + sharedCount + k] as number;
    }
    if (!solveLinearInPlace(matrix, move, ownCount)) return false;
    for (let k = 0; k < ownCount; k++) followed[(member * ownCount + k) * (1 + sharedCount) + column] = move[k] as number;
  }
  return true;
}

/** Adds what a member's loads do to the shared balances, its own unknowns following. */
function addMember(
  { sharedCount, ownCount, loadCount, loadSlopes }: BorderedSystem,
  slopes: Float64Array,
  member: number,
  followed: Float64Array,
  matrix: Float64Array,
  right: Float64Array,
): void {
  const width = sharedCount + ownCount;
  for (let load = 0; load < loadCount; load++) {
    const at = (member * (ownCount + loadCount) + ownCount + load) * width;
    for (let column = 0; column <= sharedCount; column++) {
      let change = column === 0 ? 0 : (slopes[at + column - 1] as number);
      for (let k = 0; k < ownCount; k++) {
        change += (slopes[at + sharedCount + k] as number) * (followed[(member * ownCount + k) * (1 + sharedCount) + column] as number);
      }
      for (let row = 0; row < sharedCount; row++) {
        const effect = (loadSlopes[(member * sharedCount + row) * loadCount + load] as number) * change;
        if (column === 0) right[row] = (right[row] as number) - effect;
        else matrix[row * sharedCount + column - 1] = (matrix[row * sharedCount + column - 1] as number) + effect;
      }
    }
  }
}

/** Broyden's update of each member's slopes by the step it has just made. */
function renewSlopes(
  { sharedCount, memberCount, ownCount, loadCount }: BorderedSystem,
  slopes: Float64Array,
  step: Step,
  before: Float64Array,
  answers: Float64Array,
): void {
  const answerCount = ownCount + loadCount;
  const width = sharedCount + ownCount;
  const moved = new Float64Array(width);
  moved.set(step.shared);
  for (let member = 0; member < memberCount; member++) {
    moved.set(step.own.subarray(member * ownCount, (member + 1) * ownCount), sharedCount);
    const squared = moved.reduce((sum, part) => sum + part * part, 0);
    if (squared === 0) continue;
    for (let row = member * answerCount; row < (member + 1) * answerCount; row++) {
      let missed = (answers[row] as number) - (before[row] as number);
      for (let i = 0; i < width; i++) missed -= (slopes[row * width + i] as number) * (moved[i] as number);
      for (let i = 0; i < width; i++) {
        slopes[row * width + i] = (slopes[row * width + i] as number) + (missed * (moved[i] as number)) / squared;
      }
    }
  }
}

function add(values: Float64Array, changes: Float64Array): void {
  for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) + (changes[i] as number);
}
