import type { BodyPart } from "../aircraft/index.ts";
import type { PartLoads } from "./airframe-loads.ts";
import type { Vector } from "./axes.ts";
import { bodyLoads } from "./drag-body.ts";
import { Remembered } from "./remembered.ts";
import { type Exposure, flowNumbers } from "./wash.ts";

const flowAt = 6;

/** A body at its place, with the wakes that it stands in. */
export class InstalledBody {
  readonly part: BodyPart;
  /** Pieces of it by the air that reaches them. */
  readonly exposures: readonly Exposure[];
  /** Velocity through the air that other parts move, on top, three numbers for each exposure: to be filled before `evaluate` [m/s]. */
  readonly flows: Float64Array;
  readonly remembered: Remembered<PartLoads>;
  readonly #density: number;
  readonly #centre: Vector;
  /** Drag area carried elsewhere but counted here [m²]. */
  readonly #further: number;

  constructor(part: BodyPart, density: number, centre: Vector, exposures: readonly Exposure[], further: number) {
    this.part = part;
    this.exposures = exposures;
    this.flows = new Float64Array(exposures.length * flowNumbers);
    this.remembered = new Remembered(flowAt + this.flows.length);
    this.#density = density;
    this.#centre = centre;
    this.#further = further;
  }

  /**
   * @param velocity of the centre of gravity through the air [m/s]
   * @param rates [rad/s]
   */
  evaluate(velocity: Vector, rates: Vector): PartLoads {
    const { asked } = this.remembered;
    for (let k = 0; k < 3; k++) {
      asked[k] = velocity[k] as number;
      asked[3 + k] = rates[k] as number;
    }
    const { flows } = this;
    asked.set(flows, flowAt);
    return this.remembered.found() ?? this.remembered.keep(this.#fresh(velocity, rates));
  }

  #fresh(velocity: Vector, rates: Vector): PartLoads {
    const force: [number, number, number] = [0, 0, 0];
    const moment: [number, number, number] = [0, 0, 0];
    this.exposures.forEach(({ share }, piece) => {
      const at = piece * flowNumbers;
      const flow: Vector = [this.flows[at] as number, this.flows[at + 1] as number, this.flows[at + 2] as number];
      const loads = bodyLoads(this.part, this.#density, this.#centre, velocity, rates, flow, this.#further);
      for (let k = 0; k < 3; k++) {
        force[k] = (force[k] as number) + share * (loads.force[k] as number);
        moment[k] = (moment[k] as number) + share * (loads.moment[k] as number);
      }
    });
    return { id: this.part.id, kind: "body", force, moment };
  }
}
