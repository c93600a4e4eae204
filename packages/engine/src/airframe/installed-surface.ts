import type { SurfacePart } from "../aircraft/index.ts";
import type { PartLoads, SurfaceReading } from "./airframe-loads.ts";
import type { Vector } from "./axes.ts";
import { type AirframeControl, surfaceControls } from "./control-map.ts";
import { LiftingSurface } from "./lifting-surface.ts";
import { Remembered } from "./remembered.ts";
import { type Exposure, flowNumbers } from "./wash.ts";

interface Answer {
  readonly part: PartLoads;
  readonly reading: SurfaceReading;
}

const flowAt = 7;

/** A surface at its place, with the controls that move it and the wakes that it stands in. */
export class InstalledSurface {
  readonly surface: LiftingSurface;
  /** Pieces of it by the air that reaches them. */
  readonly exposures: readonly Exposure[];
  /** Velocity through the air that other parts move, on top, three numbers for each exposure: to be filled before `evaluate` [m/s]. */
  readonly flows: Float64Array;
  readonly remembered: Remembered<Answer>;
  readonly #deflection: number;
  readonly #edges: readonly { readonly at: number; readonly control: number; readonly factor: number }[];
  readonly #deflections: Float64Array;

  constructor(part: SurfacePart, density: number, centre: Vector, controls: readonly AirframeControl[], exposures: readonly Exposure[]) {
    this.surface = new LiftingSurface(part, density, centre);
    const { deflection, edges } = surfaceControls(controls, part.id);
    this.#deflection = deflection;
    this.#edges = this.surface.edges.flatMap((edge, at) =>
      edges.filter((entry) => entry.edge === edge).map(({ control, factor }) => ({ at, control, factor })),
    );
    this.#deflections = new Float64Array(this.surface.edges.length);
    this.exposures = exposures;
    this.flows = new Float64Array(exposures.length * flowNumbers);
    this.remembered = new Remembered(flowAt + this.flows.length + this.#deflections.length);
  }

  /**
   * @param velocity of the centre of gravity through the air [m/s]
   * @param rates [rad/s]
   * @param controls of the aircraft
   */
  evaluate(velocity: Vector, rates: Vector, controls: Float64Array): Answer {
    const { asked } = this.remembered;
    for (let k = 0; k < 3; k++) {
      asked[k] = velocity[k] as number;
      asked[3 + k] = rates[k] as number;
    }
    const turned = this.#deflection < 0 ? 0 : (controls[this.#deflection] as number);
    asked[6] = turned;
    const deflections = this.#deflections;
    deflections.fill(0);
    for (const { at, control, factor } of this.#edges)
      deflections[at] = (deflections[at] as number) + factor * (controls[control] as number);
    const { flows } = this;
    asked.set(flows, flowAt);
    asked.set(deflections, flowAt + flows.length);
    const known = this.remembered.found();
    if (known) return known;
    const { part, loads } = this.surface;
    this.surface.begin(turned, deflections);
    this.exposures.forEach(({ share }, piece) => {
      const at = piece * flowNumbers;
      this.surface.add(velocity, rates, [flows[at] as number, flows[at + 1] as number, flows[at + 2] as number], share);
    });
    const { fx, fy, fz, mx, my, mz, lift, lowestLift, highestLift, lowestAngle, highestAngle, angle } = loads;
    return this.remembered.keep({
      part: { id: part.id, kind: "surface", force: [fx, fy, fz], moment: [mx, my, mz] },
      reading: { id: part.id, lift, lowestLift, highestLift, lowestAngle, highestAngle, angle },
    });
  }
}
