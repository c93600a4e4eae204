import { largestSkew, wakeInfluence } from "../aerodynamics/rotor/index.ts";
import { cubicWeights } from "../numerics/index.ts";

const skewNodes = 12;
const skewStep = largestSkew / skewNodes;
const turnNodes = 24;
const turnStep = (2 * Math.PI) / turnNodes;

/** Where a disc lies in axes of the one that makes the wake [m], and both radii. */
export interface DiscPair {
  /** Distance in the plane, and height above it. */
  readonly distance: number;
  readonly above: number;
  readonly radius: number;
  readonly ownRadius: number;
}

/**
 * Influence of one disc's wake on another over skew angle and over the direction of the flow; nodes are computed when first asked for, between them
 * the reading is once continuously differentiable. A node depends on nothing but its place.
 */
export class WakeTable {
  readonly #pair: DiscPair;
  readonly #nodes = new Map<number, number>();

  constructor(pair: DiscPair) {
    this.#pair = pair;
  }

  /**
   * @param skew angle of the wake from the axis [rad]
   * @param bearing of the other disc from the direction that the flow goes to, in the plane [rad]
   * @returns mean velocity down over that in the disc that makes the wake [1]
   */
  read(skew: number, bearing: number): number {
    const x = Math.min(Math.max(skew, 0), largestSkew) / skewStep;
    const column = Math.min(Math.floor(x), skewNodes - 1);
    // The other side is the mirror of this one.
    const y = Math.abs(Math.atan2(Math.sin(bearing), Math.cos(bearing))) / turnStep;
    const row = Math.floor(y);
    const wx = cubicWeights(x - column);
    const wy = cubicWeights(y - row);
    let sum = 0;
    for (let j = 0; j < 4; j++)
      for (let i = 0; i < 4; i++) sum += (wx[i] as number) * (wy[j] as number) * this.#node(column + i - 1, row + j - 1);
    return sum;
  }

  #node(column: number, row: number): number {
    const skew = Math.min(Math.abs(column), 2 * skewNodes - Math.abs(column));
    const turn = Math.min(Math.abs(row), turnNodes - Math.abs(row));
    const key = skew * turnNodes + turn;
    const known = this.#nodes.get(key);
    if (known !== undefined) return known;
    const { distance, above, radius, ownRadius } = this.#pair;
    const angle = turn * turnStep;
    const place = {
      aft: (distance * Math.cos(angle)) / ownRadius,
      side: (distance * Math.sin(angle)) / ownRadius,
      above: above / ownRadius,
      radius: radius / ownRadius,
    };
    const value = wakeInfluence(place, skew * skewStep);
    this.#nodes.set(key, value);
    return value;
  }
}
