import type { Figure, GridFigure } from "../figures.ts";
import type { RotorOutputs } from "./output-schema.ts";

/** Steeper angles would leave no colours for the working part of the disc [rad]. */
const steepestShown = Math.PI / 6;

/** Loads around the turn, and maps over the disc: azimuth across, radius up. */
export function rotorDiscFigures(outputs: RotorOutputs): readonly Figure[] {
  const { discMap } = outputs;
  return [
    around(outputs),
    map(
      outputs,
      "disc-angle-of-attack",
      "Angle of attack over the disc, azimuth 0 aft; blank beyond 30° either way, as in reverse flow",
      "Angle of attack",
      "angle",
      discMap.angleOfAttack.map((angle) => (Math.abs(angle) > steepestShown ? null : angle)),
    ),
    map(outputs, "disc-reynolds", "Section Reynolds number over the disc", "Reynolds number", "dimensionless", discMap.reynoldsNumber),
    map(outputs, "disc-thrust", "Thrust over the disc", "Thrust coefficient per radius fraction", "dimensionless", discMap.thrust),
  ];
}

function around({ azimuthal }: RotorOutputs): Figure {
  return {
    kind: "lines",
    id: "azimuthal-loading",
    caption: "Thrust and flap moment around the turn, azimuth 0 aft",
    x: { label: "Azimuth", quantity: "angle" },
    y: { label: "Coefficient", quantity: "dimensionless" },
    series: [
      { name: "thrust", meaning: "rotor", x: azimuthal.azimuth, y: azimuthal.thrust },
      { name: "flap moment", meaning: "ordered.3", x: azimuthal.azimuth, y: azimuthal.flapMoment },
      { name: "torque × 10", meaning: "losses", x: azimuthal.azimuth, y: azimuthal.torque.map((value) => value * 10) },
    ],
  };
}

function map(
  { discMap }: RotorOutputs,
  id: string,
  caption: string,
  label: string,
  quantity: "angle" | "dimensionless",
  values: readonly (number | null)[],
): GridFigure {
  const { azimuth, radiusFraction } = discMap;
  return {
    kind: "grid",
    id,
    caption,
    x: { label: "Azimuth", quantity: "angle" },
    y: { label: "Radius fraction", quantity: "dimensionless" },
    value: { label, quantity },
    xs: azimuth,
    ys: radiusFraction,
    values: radiusFraction.flatMap((_, element) => azimuth.map((_one, j) => values[j * radiusFraction.length + element] ?? null)),
  };
}
