/** Weights of at most four neighbouring nodes of an axis, from node `first` on: a value is their weighted sum. */
export interface Stencil {
  readonly first: number;
  readonly weights: readonly number[];
}

/** A point this close to a node, as a share of the cell, is taken for the node: values there are exact. */
const onNode = 1e-9;
/** Beyond the ends the end cell is continued by at most this share of it. */
const reach = 0.1;

/**
 * Weights of a curve through the nodes of an axis. `smooth` is once differentiable: cubic Hermite with slopes of the
 * parabola through three neighbours, one-sided at the ends; linear between two nodes, constant with one. `linear` uses
 * the two nodes on either side alone.
 *
 * @derivation Both the Hermite form and three-point slopes are linear in the node values, so their product is a weighted sum.
 * @param nodes Ascending, at least one.
 */
export function stencilAt(nodes: readonly number[], at: number, shape: "smooth" | "linear" = "smooth"): Stencil {
  const last = nodes.length - 1;
  if (last === 0) return { first: 0, weights: [1] };
  let cell = 0;
  while (cell < last - 1 && at >= (nodes[cell + 1] as number)) cell++;
  const low = nodes[cell] as number;
  const high = nodes[cell + 1] as number;
  const share = (at - low) / (high - low);
  if (!(share >= -reach && share <= 1 + reach)) throw new RangeError(`${at} lies outside the table from ${nodes[0]} to ${nodes[last]}`);
  if (Math.abs(share) <= onNode) return { first: cell, weights: [1] };
  if (Math.abs(share - 1) <= onNode) return { first: cell + 1, weights: [1] };
  if (last === 1 || shape === "linear") return { first: cell, weights: [1 - share, share] };
  const first = Math.max(0, cell - 1);
  const weights = new Array<number>(Math.min(last, cell + 2) - first + 1).fill(0);
  const square = share * share;
  const cube = square * share;
  const add = (node: number, weight: number) => {
    weights[node - first] = (weights[node - first] as number) + weight;
  };
  add(cell, 2 * cube - 3 * square + 1);
  add(cell + 1, 3 * square - 2 * cube);
  addSlope(nodes, cell, (cube - 2 * square + share) * (high - low), add);
  addSlope(nodes, cell + 1, (cube - square) * (high - low), add);
  return { first, weights };
}

/** Adds `factor` times the slope at a node, of the parabola through it and its two nearest neighbours. */
function addSlope(nodes: readonly number[], node: number, factor: number, add: (node: number, weight: number) => void): void {
  const middle = Math.min(Math.max(node, 1), nodes.length - 2);
  const x0 = nodes[middle - 1] as number;
  const x1 = nodes[middle] as number;
  const x2 = nodes[middle + 1] as number;
  const at = nodes[node] as number;
  add(middle - 1, (factor * (2 * at - x1 - x2)) / ((x0 - x1) * (x0 - x2)));
  add(middle, (factor * (2 * at - x0 - x2)) / ((x1 - x0) * (x1 - x2)));
  add(middle + 1, (factor * (2 * at - x0 - x1)) / ((x2 - x0) * (x2 - x1)));
}
