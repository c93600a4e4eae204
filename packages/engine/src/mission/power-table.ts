import type { PoweredMode } from "../performance/index.ts";
import { type Lookup, type PowerQuery, type PowerTableAxes, powerLookup, type TableNode, type WeightedNode } from "./power-lookup.ts";
import type { NamedLimit, PowerAnswer, PowerRequest, PowerSource } from "./power-source.ts";

/** Power of one step, interpolated. */
export type TablePower =
  | {
      readonly kind: "flies";
      readonly mode: PoweredMode;
      /** [W] */
      readonly electricPower: number;
      /** [W] */
      readonly rotorShaftPower: number;
      /** [1] */
      readonly stallMargin: number;
      /** Used shares of the source's limits [1]. */
      readonly shares: readonly number[];
    }
  | { readonly kind: "no-equilibrium"; readonly limit: NamedLimit };

/** Which rotor modes a query may use, and whether they are compared or the first that flies is taken. */
export interface ModeChoice {
  readonly modes: readonly PoweredMode[];
  readonly take: "cheapest" | "first";
}

export interface PowerTable {
  /** How many flights were trimmed for it. */
  readonly nodes: number;
  at(query: PowerQuery, choice: ModeChoice): TablePower;
}

/** What a flight will ask: known before it is flown, since its path does not depend on power. */
export interface ExpectedQuery {
  readonly query: PowerQuery;
  readonly choice: ModeChoice;
}

/**
 * Exact flights at the nodes that the expected queries touch, and a smooth interpolation between them. Nodes are solved in
 * an order that depends on the nodes alone, each from its nearest solved neighbour, so the table never depends on who asks.
 */
export function powerTable(
  source: PowerSource,
  axes: PowerTableAxes,
  expected: readonly ExpectedQuery[],
  progress: (done: number, total: number) => void,
): PowerTable {
  const lookup = powerLookup(axes);
  const solved = { "clutch-closed": new Map<number, PowerAnswer>(), "clutch-open": new Map<number, PowerAnswer>() };
  let done = 0;
  let total = 0;
  for (const mode of ["clutch-closed", "clutch-open"] as const) {
    const wanted = wantedNodes(expected, mode, lookup, solved);
    total += 2 * wanted.length;
    const request = (node: TableNode): PowerRequest => {
      progress(done++, total);
      return { ...flightAt(node, axes), mode };
    };
    solveNodes(wanted, axes, solved[mode], {
      first: (node, trace) => source.power(request(node), trace),
      again: (node, trace) => source.powerFrom(request(node), trace),
    });
  }
  progress(total, total);
  return {
    nodes: solved["clutch-closed"].size + solved["clutch-open"].size,
    at(query, choice) {
      const around = lookup(query);
      let best: TablePower | undefined;
      for (const mode of choice.modes) {
        const found = interpolated(around, mode, solved[mode], source.limits.length);
        if (found.kind === "no-equilibrium") best ??= found;
        else if (choice.take === "first") return found;
        else if (best === undefined || best.kind === "no-equilibrium" || found.electricPower < best.electricPower) best = found;
      }
      return best as TablePower;
    },
  };
}

function flightAt(node: TableNode, axes: PowerTableAxes): Omit<PowerRequest, "mode"> {
  const { speeds, climbs, altitudes } = axes[node.part];
  const speed = speeds[node.speed] as number;
  const climb = climbs[node.climb] as number;
  const forward = node.part === "legs" ? Math.sqrt(Math.max(0, speed * speed - climb * climb)) : speed;
  return { loading: node.loading, altitude: altitudes[node.altitude] as number, forward, climb };
}

type Solved = Readonly<Record<PoweredMode, ReadonlyMap<number, PowerAnswer>>>;

/** Nodes of one mode that some query needs; a later mode of a query that takes the first is needed only where the earlier do not fly. */
function wantedNodes(
  expected: readonly ExpectedQuery[],
  mode: PoweredMode,
  lookup: (query: PowerQuery) => Lookup,
  solved: Solved,
): readonly TableNode[] {
  const wanted = new Map<number, TableNode>();
  for (const { query, choice } of expected) {
    const place = choice.modes.indexOf(mode);
    if (place < 0) continue;
    const { smooth, nearest } = lookup(query);
    const earlier = choice.take === "first" ? choice.modes.slice(0, place) : [];
    const flies = (other: PoweredMode) => nearest.every(({ node }) => solved[other].get(node.id)?.kind === "flies");
    if (earlier.some(flies)) continue;
    for (const { node } of nearest) wanted.set(node.id, node);
    for (const { node } of smooth) wanted.set(node.id, node);
  }
  return [...wanted.values()];
}

/**
 * Solves level flight first, from slow to fast, then climbs and descents, each from the nearest flight already known; then
 * back again, each from the nearest flight on the other side. Two local optima exist at some speeds: the cheaper one stays.
 */
function solveNodes(
  nodes: readonly TableNode[],
  axes: PowerTableAxes,
  answers: Map<number, PowerAnswer>,
  power: {
    readonly first: (node: TableNode, trace: unknown) => PowerAnswer;
    readonly again: (node: TableNode, trace: unknown) => PowerAnswer;
  },
): void {
  const steepness = (node: TableNode) => Math.abs(axes[node.part].climbs[node.climb] as number);
  const order = [...nodes].sort((first, second) => steepness(first) - steepness(second) || first.id - second.id);
  const sweep = (list: readonly TableNode[], starting: (node: TableNode, nearest: PowerAnswer | undefined) => void) => {
    const passed: TableNode[] = [];
    for (const node of list) {
      const nearest = nearestOf(node, passed);
      starting(node, nearest && answers.get(nearest.id));
      if (answers.get(node.id)?.kind === "flies") passed.push(node);
    }
  };
  sweep(order, (node, nearest) => answers.set(node.id, power.first(node, traceOf(nearest))));
  sweep([...order].reverse(), (node, nearest) => {
    const trace = traceOf(nearest);
    if (trace === undefined) return;
    const before = answers.get(node.id) as PowerAnswer;
    const again = power.again(node, trace);
    if (again.kind === "flies" && (before.kind !== "flies" || again.electricPower < before.electricPower)) answers.set(node.id, again);
  });
}

function traceOf(answer: PowerAnswer | undefined): unknown {
  return answer?.kind === "flies" ? answer.trace : undefined;
}

function nearestOf(node: TableNode, others: readonly TableNode[]): TableNode | undefined {
  let nearest: TableNode | undefined;
  for (const other of others) {
    if (nearest === undefined || apart(node, other) < apart(node, nearest)) nearest = other;
  }
  return nearest;
}

/** How unlike two flights are: part, then loading, then steps along the axes. */
function apart(first: TableNode, second: TableNode): number {
  const elsewhere = (first.part === second.part ? 0 : 1000) + 100 * Math.abs(first.loading - second.loading);
  const steps =
    4 * Math.abs(first.speed - second.speed) + 2 * Math.abs(first.climb - second.climb) + Math.abs(first.altitude - second.altitude);
  return elsewhere + steps;
}

/** A query flies when the nodes on all sides of it fly; the smooth law is used where its farther nodes fly too. */
function interpolated(around: Lookup, mode: PoweredMode, solved: ReadonlyMap<number, PowerAnswer>, limits: number): TablePower {
  for (const { node } of around.nearest) {
    const answer = solved.get(node.id) as PowerAnswer;
    if (answer.kind === "no-equilibrium") return answer;
  }
  const whole = around.smooth.every(({ node }) => solved.get(node.id)?.kind === "flies");
  return { kind: "flies", mode, ...weightedSum(whole ? around.smooth : around.nearest, around.nearest, solved, limits) };
}

/** Margins and shares go by the nearest nodes: between flights within a limit no curve may run beyond it. */
function weightedSum(
  nodes: readonly WeightedNode[],
  nearest: readonly WeightedNode[],
  solved: ReadonlyMap<number, PowerAnswer>,
  limits: number,
) {
  let electricPower = 0;
  let rotorShaftPower = 0;
  for (const { node, weight } of nodes) {
    const answer = solved.get(node.id);
    if (answer?.kind !== "flies") continue;
    electricPower += weight * answer.electricPower;
    rotorShaftPower += weight * answer.rotorShaftPower;
  }
  let stallMargin = 0;
  const shares = new Array<number>(limits).fill(0);
  for (const { node, weight } of nearest) {
    const answer = solved.get(node.id);
    if (answer?.kind !== "flies") continue;
    stallMargin += weight * answer.stallMargin;
    for (let limit = 0; limit < limits; limit++) shares[limit] = (shares[limit] as number) + weight * (answer.shares[limit] as number);
  }
  return { electricPower, rotorShaftPower, stallMargin, shares };
}
