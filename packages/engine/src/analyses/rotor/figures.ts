import type { Figure } from "../figures.ts";
import { rotorDiscFigures } from "./disc-figures.ts";
import type { RotorOutputs } from "./output-schema.ts";
import type { RotorInputs } from "./schema.ts";
import { besideMeasurements, rotorSweepFigures } from "./sweep-figures.ts";

/** What a rotor does: curves of a sweep first, then tables, loads along the blade, around the turn and over the disc. */
export function rotorFigures(outputs: RotorOutputs, inputs: RotorInputs): readonly Figure[] {
  return [
    ...rotorSweepFigures(outputs, inputs.sweep?.combine === "together"),
    forces(outputs),
    attitude(outputs),
    coefficients(outputs),
    ...roots(outputs),
    loading(outputs),
    angles(outputs),
    ...rotorDiscFigures(outputs),
    ...besideMeasurements(outputs),
  ];
}

function forces(outputs: RotorOutputs): Figure {
  return {
    kind: "table",
    id: "forces",
    caption: "Forces and power",
    columns: [
      { label: "Thrust", quantity: "force" },
      { label: "H-force", quantity: "force" },
      { label: "Side force", quantity: "force" },
      { label: "Lift", quantity: "force" },
      { label: "Drag", quantity: "force" },
      { label: "Torque", quantity: "torque" },
      { label: "Power", quantity: "power" },
      { label: "of it induced", quantity: "power" },
      { label: "of it profile", quantity: "power" },
      { label: "Hub moment, pitch", quantity: "torque" },
      { label: "Hub moment, roll", quantity: "torque" },
      ...(outputs.centrifugalForce === null ? [] : [{ label: "Centrifugal force of a blade", quantity: "force" as const }]),
    ],
    rows: [
      [
        outputs.thrust,
        outputs.hForce,
        outputs.sideForce,
        outputs.lift,
        outputs.drag,
        outputs.torque,
        outputs.power,
        outputs.inducedPower,
        outputs.profilePower,
        outputs.hubPitchMoment,
        outputs.hubRollMoment,
        ...(outputs.centrifugalForce === null ? [] : [outputs.centrifugalForce]),
      ],
    ],
  };
}

function attitude(outputs: RotorOutputs): Figure {
  const { airspeedBandLow: low, airspeedBandHigh: high } = outputs;
  const band =
    low === null || high === null
      ? []
      : [
          { label: "Airspeed, by errors from", value: low },
          { label: "Airspeed, by errors to", value: high },
        ];
  return {
    kind: "table",
    id: "attitude",
    caption: "Settings and angles",
    columns: [
      { label: "State" },
      { label: "Airspeed", quantity: "speed" },
      ...band.map(({ label }) => ({ label, quantity: "speed" as const })),
      { label: "Climb rate", quantity: "speed" },
      { label: "Rotation rate", quantity: "rotationRate" },
      { label: "Collective", quantity: "angle" },
      { label: "Shaft angle", quantity: "angle" },
      { label: "Disc angle", quantity: "angle" },
      { label: "Coning", quantity: "angle" },
      { label: "Flap, back", quantity: "angle" },
      { label: "Flap, down advancing", quantity: "angle" },
      { label: "Induced velocity", quantity: "speed" },
    ],
    rows: [
      [
        outputs.state,
        outputs.airspeed,
        ...band.map(({ value }) => value),
        outputs.climbRate,
        outputs.rotationRate,
        outputs.collective,
        outputs.shaftAngle,
        outputs.discAngle,
        outputs.coning,
        outputs.flapLongitudinal,
        outputs.flapLateral,
        outputs.inducedVelocity,
      ],
    ],
  };
}

function coefficients(outputs: RotorOutputs): Figure {
  const one = (label: string) => ({ label, quantity: "dimensionless" }) as const;
  return {
    kind: "table",
    id: "coefficients",
    caption: "Coefficients",
    columns: [
      one("Advance ratio"),
      one("Thrust"),
      one("Blade loading"),
      one("H-force"),
      one("Torque"),
      one("Lift"),
      one("Drag"),
      one("Lift over drag"),
      one("Figure of merit"),
      one("Advancing tip Mach number"),
      one("Reynolds number"),
    ],
    rows: [
      [
        outputs.advanceRatio,
        outputs.ct,
        outputs.bladeLoading,
        outputs.ch,
        outputs.cq,
        outputs.cl,
        outputs.cd,
        outputs.liftToDrag,
        outputs.figureOfMerit,
        outputs.advancingTipMach,
        outputs.reynoldsNumber,
      ],
    ],
  };
}

/** Every angle without torque, where there are several. */
function roots({ torqueRoots }: RotorOutputs): readonly Figure[] {
  if (torqueRoots.length < 2) return [];
  return [
    {
      kind: "table",
      id: "torque-roots",
      caption: "Every state without torque at this rotor speed",
      columns: [
        { label: "Shaft angle", quantity: "angle" },
        { label: "Collective", quantity: "angle" },
        { label: "Thrust", quantity: "force" },
        { label: "Lift over drag", quantity: "dimensionless" },
        { label: "Answered with" },
        { label: "Keeps its speed" },
      ],
      rows: torqueRoots.map((root) => [
        root.shaftAngle,
        root.collective,
        root.thrust,
        root.liftToDrag,
        root.taken ? "yes" : "no",
        root.holdsSpeed ? "yes" : "no",
      ]),
    },
  ];
}

function loading({ spanwise }: RotorOutputs): Figure {
  return {
    kind: "lines",
    id: "spanwise-loading",
    caption: "Thrust and torque coefficient per radius fraction, mean over the turn",
    x: { label: "Radius fraction", quantity: "dimensionless" },
    y: { label: "Coefficient per radius fraction", quantity: "dimensionless" },
    series: [
      { name: "thrust", meaning: "rotor", x: spanwise.radiusFraction, y: spanwise.thrust },
      { name: "torque × 10", meaning: "losses", x: spanwise.radiusFraction, y: spanwise.torque.map((value) => value * 10) },
    ],
  };
}

function angles({ spanwise }: RotorOutputs): Figure {
  return {
    kind: "lines",
    id: "angle-of-attack",
    caption: "Angle of attack along the blade",
    x: { label: "Radius fraction", quantity: "dimensionless" },
    y: { label: "Angle of attack", quantity: "angle" },
    series: [
      { name: "advancing", meaning: "ordered.1", x: spanwise.radiusFraction, y: spanwise.advancingAngle },
      { name: "retreating", meaning: "ordered.3", x: spanwise.radiusFraction, y: spanwise.retreatingAngle },
    ],
  };
}
