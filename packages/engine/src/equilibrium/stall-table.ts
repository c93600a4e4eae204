import { cubicWeights } from "../numerics/index.ts";
import type { ThrustLimit } from "./thrust-limit.ts";

/** Nodes of the table: in-plane and axial flow over tip speed. Beyond its ends the table extrapolates its last cell. */
const muStep = 0.05;
const lambdaStep = 0.025;

export type StallSearch = (mu: number, lambdaC: number, tipSpeed: number) => ThrustLimit;

/**
 * Largest steady thrust coefficient, and its collective, over in-plane flow, axial flow and tip speed: nodes are found by search when first
 * asked for and kept; between them the reading is bicubic (smooth for the solver's derivatives) and linear in tip speed. Equal
 * slow and fast tip speeds make it a table of one tip speed: enough where the section knows no Reynolds number, since the
 * answer is searched exactly anyway.
 * A node depends on nothing but its place, so the order of asking changes no bit.
 */
export class StallTable {
  readonly #search: StallSearch;
  readonly #slow: number;
  readonly #fast: number;
  readonly #nodes = new Map<number, ThrustLimit>();
  /** The cell read last, at each tip speed. */
  readonly #cells: ({ readonly column: number; readonly row: number; readonly nodes: readonly ThrustLimit[] } | undefined)[] = [];
  #last = { mu: Number.NaN, lambdaC: Number.NaN, tipSpeed: Number.NaN, limit: { thrust: Number.NaN, collective: Number.NaN } };

  constructor(search: StallSearch, slowTipSpeed: number, fastTipSpeed: number) {
    this.#search = search;
    this.#slow = slowTipSpeed;
    this.#fast = fastTipSpeed;
  }

  /** Largest steady C_T [1] and its collective [rad]. */
  read(mu: number, lambdaC: number, tipSpeed: number): ThrustLimit {
    const last = this.#last;
    if (last.mu === mu && last.lambdaC === lambdaC && last.tipSpeed === tipSpeed) return last.limit;
    const limit = this.#interpolated(mu, lambdaC, tipSpeed);
    this.#last = { mu, lambdaC, tipSpeed, limit };
    return limit;
  }

  #interpolated(mu: number, lambdaC: number, tipSpeed: number): ThrustLimit {
    const slow = this.#plane(mu, lambdaC, 0);
    if (this.#fast <= this.#slow) return slow;
    const share = (tipSpeed - this.#slow) / (this.#fast - this.#slow);
    const fast = this.#plane(mu, lambdaC, 1);
    return {
      thrust: slow.thrust + (fast.thrust - slow.thrust) * share,
      collective: slow.collective + (fast.collective - slow.collective) * share,
    };
  }

  #plane(mu: number, lambdaC: number, level: 0 | 1): ThrustLimit {
    const x = Math.max(0, mu) / muStep;
    const y = lambdaC / lambdaStep;
    const column = Math.floor(x);
    const row = Math.floor(y);
    const cell = this.#cell(column, row, level);
    const wx = cubicWeights(x - column);
    const wy = cubicWeights(y - row);
    let thrust = 0;
    let collective = 0;
    for (let j = 0; j < 4; j++) {
      for (let i = 0; i < 4; i++) {
        const weight = (wx[i] as number) * (wy[j] as number);
        const node = cell[j * 4 + i] as ThrustLimit;
        thrust += weight * node.thrust;
        collective += weight * node.collective;
      }
    }
    return { thrust, collective };
  }

  /** The sixteen nodes around a cell, row by row. */
  #cell(column: number, row: number, level: 0 | 1): readonly ThrustLimit[] {
    const last = this.#cells[level];
    if (last && last.column === column && last.row === row) return last.nodes;
    const nodes = Array.from({ length: 16 }, (_, k) => this.#node(column + (k % 4) - 1, row + Math.floor(k / 4) - 1, level));
    this.#cells[level] = { column, row, nodes };
    return nodes;
  }

  /** The disc knows no forward or backward: in-plane flow enters by its size. */
  #node(column: number, row: number, level: 0 | 1): ThrustLimit {
    const across = Math.abs(column);
    const key = (across * 4096 + (row + 2048)) * 2 + level;
    const known = this.#nodes.get(key);
    if (known !== undefined) return known;
    const value = this.#search(across * muStep, row * lambdaStep, level === 0 ? this.#slow : this.#fast);
    this.#nodes.set(key, value);
    return value;
  }
}
