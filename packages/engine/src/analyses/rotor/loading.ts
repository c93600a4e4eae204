import { type ElementLoad, type RotorWorkspace, rotorLoading, solveRotorInflowAndFlap } from "../../aerodynamics/rotor/index.ts";
import type { RotorPointOutputs } from "./output-schema.ts";
import type { RotorState } from "./state.ts";

type Distributions = Pick<RotorPointOutputs, "spanwise" | "azimuthal" | "discMap">;

/** Loads along the blade, around the turn and over the disc. */
export function rotorDistributions(ws: RotorWorkspace, { rotor, point }: RotorState): Distributions {
  const { tipSpeed, air } = point;
  // Rings may hold the velocities of another state, as the search for the largest thrust leaves them.
  if (ws.model.inflowBalance === "annular") solveRotorInflowAndFlap(ws, point);
  const kinematicViscosity = air.dynamicViscosity / air.density;
  const loads = rotorLoading(ws, { ...rotor, theta0: point.collective, tipSpeed, speedOfSound: air.speedOfSound, kinematicViscosity });
  const elements = ws.mesh.radiusFraction.length;
  const azimuths = ws.mesh.sine.length;
  const along = Array.from({ length: elements }, (_, element) => loads.filter((_, index) => index % elements === element));
  const around = Array.from({ length: azimuths }, (_, j) => loads.slice(j * elements, (j + 1) * elements));
  const widths = Array.from({ length: elements }, (_, element) => elementWidth(ws, element));
  const radiusFraction = Array.from(ws.mesh.radiusFraction);
  const azimuth = Array.from({ length: azimuths }, (_, j) => ((j + 0.5) * 2 * Math.PI) / azimuths);
  const width = (index: number): number => widths[index % elements] ?? 1;
  return {
    spanwise: {
      radiusFraction,
      thrust: along.map((row, element) => sum(row, (load) => load.thrust) / width(element)),
      torque: along.map((row, element) => sum(row, (load) => load.torque) / width(element)),
      advancingAngle: along.map((row) => nearest(row, 1).angleOfAttack),
      retreatingAngle: along.map((row) => nearest(row, -1).angleOfAttack),
    },
    azimuthal: {
      azimuth,
      thrust: around.map((row) => azimuths * sum(row, (load) => load.thrust)),
      torque: around.map((row) => azimuths * sum(row, (load) => load.torque)),
      flapMoment: around.map((row) => azimuths * sum(row, (load) => load.thrust * load.radiusFraction)),
    },
    discMap: {
      azimuth,
      radiusFraction,
      angleOfAttack: loads.map((load) => load.angleOfAttack),
      reynoldsNumber: loads.map((load, index) => (load.speed * tipSpeed * (ws.mesh.chord[index % elements] ?? 0)) / kinematicViscosity),
      machNumber: loads.map((load) => (load.speed * tipSpeed) / air.speedOfSound),
      thrust: loads.map((load, index) => (azimuths * load.thrust) / width(index)),
    },
  };
}

/** Length of an element over radius, back from its weight [1]. */
function elementWidth({ mesh, model }: RotorWorkspace, element: number): number {
  const chord = mesh.chord[element] ?? 1;
  return ((mesh.weight[element] ?? 0) * 2 * Math.PI * model.radius * mesh.sine.length) / (model.bladeCount * chord);
}

function sum(row: readonly ElementLoad[], of: (load: ElementLoad) => number): number {
  return row.reduce((total, load) => total + of(load), 0);
}

function nearest(row: readonly ElementLoad[], sine: number): ElementLoad {
  return row.reduce((best, load) => (Math.abs(Math.sin(load.azimuth) - sine) < Math.abs(Math.sin(best.azimuth) - sine) ? load : best));
}
