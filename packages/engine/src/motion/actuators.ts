import type { MovingControl } from "./moving-aircraft.ts";

/** What is wrong with a control. */
export type ControlFault = { readonly kind: "jammed" } | { readonly kind: "hard-over"; readonly toward: "minimum" | "maximum" };

/** Controls that move no faster than their rate and no farther than their stops; counts how often either held them. */
export class Actuators {
  readonly #controls: readonly MovingControl[];
  readonly #faults: (ControlFault | undefined)[];
  readonly #highest: Float64Array;
  /** Where they are, SI. */
  readonly positions: Float64Array;
  /** Steps in which a control was asked for more than its rate, and beyond its stops. */
  readonly atRate: Float64Array;
  readonly atStop: Float64Array;

  constructor(controls: readonly MovingControl[], positions: Float64Array) {
    this.#controls = controls;
    this.#faults = controls.map(() => undefined);
    this.#highest = Float64Array.from(controls, ({ maximum }) => maximum);
    this.positions = Float64Array.from(positions);
    this.atRate = new Float64Array(controls.length);
    this.atStop = new Float64Array(controls.length);
  }

  fail(control: number, fault: ControlFault): void {
    this.#faults[control] = fault;
  }

  /** From now on a control goes no farther up than this, for lack of power. */
  limit(control: number, highest: number): void {
    this.#highest[control] = Math.min(this.#highest[control] as number, highest);
  }

  /** Moves every control toward what is asked for, for `step` seconds. */
  move(asked: Float64Array, step: number): void {
    this.#controls.forEach(({ minimum, maximum, rate }, i) => {
      const fault = this.#faults[i];
      if (fault?.kind === "jammed") return;
      const now = this.positions[i] as number;
      let target = asked[i] as number;
      if (fault?.kind === "hard-over") target = fault.toward === "minimum" ? minimum : maximum;
      const held = Math.min(Math.max(target, minimum), this.#highest[i] as number);
      if (held !== target && Math.abs(held - target) > 1e-9) this.atStop[i] = (this.atStop[i] as number) + 1;
      const most = rate === undefined ? Number.POSITIVE_INFINITY : rate * step;
      const change = Math.min(Math.max(held - now, -most), most);
      if (change !== held - now) this.atRate[i] = (this.atRate[i] as number) + 1;
      this.positions[i] = now + change;
    });
  }
}
