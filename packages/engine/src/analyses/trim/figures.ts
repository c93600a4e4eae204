import type { Figure, TableFigure } from "../figures.ts";
import { forcePicture } from "./force-picture.ts";
import type { FlownStateOutputs, TrimInputs, TrimOutputs } from "./schema.ts";

type Row = (number | string | boolean | null)[];

/** Pictures of one trim: who carries, who draws, where the controls stand, forces and moments part by part. */
export function trimFigures(outputs: TrimOutputs, inputs?: TrimInputs): readonly Figure[] {
  const { state } = outputs.optimum;
  if (!state) return [refusalTable(outputs)];
  return [
    forcePicture(
      outputs.aircraft,
      { ...state, mass: outputs.takeoffMass, centre: outputs.centre, turns: (inputs?.turnRate ?? 0) !== 0 },
      state.parts,
    ),
    controlTable(outputs),
    partTable(state),
    powerTable(state),
    rotorTable(state),
    propellerTable(state),
    surfaceTable(state),
    interferenceTable(outputs),
    comparison(outputs),
  ];
}

function refusalTable({ optimum, schedule }: TrimOutputs): TableFigure {
  const row = (name: string, refusal: TrimOutputs["optimum"]["refusal"]): Row => [
    name,
    refusal?.reason ?? "flies",
    refusal?.missing ?? null,
  ];
  return {
    kind: "table",
    id: "refusal",
    caption: "Why it does not fly, and how much is missing in the solver's own measure",
    columns: [{ label: "controls" }, { label: "reason" }, { label: "missing", quantity: "dimensionless" }],
    rows: [row("at the optimum", optimum.refusal), row("on schedule", schedule.refusal)],
  };
}

function controlTable({ optimum, schedule }: TrimOutputs): TableFigure {
  return {
    kind: "table",
    id: "controls",
    caption: "Where the controls stand at least power and on schedule; the margin is the way left over half the range",
    columns: [
      { label: "control" },
      { label: "angle", quantity: "angle" },
      { label: "tip speed", quantity: "speed" },
      { label: "thrust", quantity: "force" },
      { label: "margin", quantity: "dimensionless", unit: "%" },
      { label: "angle, schedule", quantity: "angle" },
      { label: "tip speed, schedule", quantity: "speed" },
      { label: "thrust, schedule", quantity: "force" },
    ],
    rows: (optimum.state?.controls ?? []).map((control, i) => {
      const other = schedule.state?.controls[i];
      return [
        control.id,
        control.angle,
        control.speed,
        control.force,
        control.margin,
        other?.angle ?? null,
        other?.speed ?? null,
        other?.force ?? null,
      ];
    }),
  };
}

function partTable({ parts }: FlownStateOutputs): TableFigure {
  return {
    kind: "table",
    id: "parts",
    caption: "What every part does to the aircraft: lift against gravity, force in body axes, moment about the centre of gravity",
    columns: [
      { label: "part" },
      { label: "lift", quantity: "force" },
      { label: "of the weight", quantity: "dimensionless", unit: "%" },
      { label: "forward", quantity: "force" },
      { label: "right", quantity: "force" },
      { label: "down", quantity: "force" },
      { label: "roll right", quantity: "torque" },
      { label: "nose up", quantity: "torque" },
      { label: "nose right", quantity: "torque" },
    ],
    rows: parts.map(({ id, lift, liftShare, force, moment }) => [
      id,
      lift,
      liftShare,
      force.x,
      force.y,
      force.z,
      moment.x,
      moment.y,
      moment.z,
    ]),
  };
}

function powerTable({ power }: FlownStateOutputs): TableFigure {
  return {
    kind: "table",
    id: "power",
    caption: "Who draws electric power, at the pack's terminals",
    columns: [
      { label: "consumer" },
      { label: "shaft power", quantity: "power" },
      { label: "losses", quantity: "power" },
      { label: "electric power", quantity: "power" },
    ],
    rows: power.map(({ id, shaftPower, losses, electricPower }) => [id, shaftPower, losses, electricPower]),
  };
}

function rotorTable({ rotors }: FlownStateOutputs): TableFigure {
  return {
    kind: "table",
    id: "rotors",
    caption: "Rotors; the distance is from the range held against published data, 0 inside it",
    columns: [
      { label: "rotor" },
      { label: "tip speed", quantity: "speed" },
      { label: "thrust", quantity: "force" },
      { label: "torque", quantity: "torque" },
      { label: "blade loading", quantity: "dimensionless" },
      { label: "stall margin", quantity: "dimensionless" },
      { label: "advance ratio", quantity: "dimensionless" },
      { label: "disc back", quantity: "angle" },
      { label: "disc right", quantity: "angle" },
      { label: "distance", quantity: "dimensionless" },
    ],
    rows: rotors.map((rotor) => [
      rotor.id,
      rotor.tipSpeed,
      rotor.thrust,
      rotor.torque,
      rotor.bladeLoading,
      rotor.stallMargin,
      rotor.advanceRatio,
      rotor.flapBack,
      rotor.flapRight,
      rotor.domain.distance,
    ]),
  };
}

function propellerTable({ propellers }: FlownStateOutputs): TableFigure {
  return {
    kind: "table",
    id: "propellers",
    caption: "Propellers; negative thrust is run backwards",
    columns: [
      { label: "propeller" },
      { label: "thrust", quantity: "force" },
      { label: "rotation rate", quantity: "rotationRate" },
      { label: "shaft power", quantity: "power" },
      { label: "torque", quantity: "torque" },
    ],
    rows: propellers.map(({ id, thrust, rotationRate, shaftPower, torque }) => [id, thrust, rotationRate, shaftPower, torque]),
  };
}

function surfaceTable({ surfaces }: FlownStateOutputs): TableFigure {
  return {
    kind: "table",
    id: "surfaces",
    caption: "Surfaces in the air that reaches them",
    columns: [
      { label: "surface" },
      { label: "lift coefficient", quantity: "dimensionless" },
      { label: "angle of attack", quantity: "angle" },
    ],
    rows: surfaces.map(({ id, liftCoefficient, angleOfAttack }) => [id, liftCoefficient, angleOfAttack]),
  };
}

function interferenceTable({ interference }: TrimOutputs): TableFigure {
  return {
    kind: "table",
    id: "interference",
    caption: "Air moved by one part that meets another: what least power would be with each switched off",
    columns: [
      { label: "from" },
      { label: "on" },
      { label: "as" },
      { label: "factor", quantity: "dimensionless" },
      { label: "power without", quantity: "power" },
      { label: "costs", quantity: "dimensionless", unit: "%" },
      { label: "source" },
    ],
    rows: interference.map(({ from, on, kind, factor, without, effect, source }) => [
      from,
      on,
      kind.replaceAll("-", " "),
      factor,
      without,
      effect,
      source ?? "",
    ]),
  };
}

function comparison({ optimum, schedule, reduced, takeoffMass, centre }: TrimOutputs): TableFigure {
  const rows: Row[] = [
    ["least power, six components", optimum.state?.electricPower ?? null, optimum.state?.bindingLimit ?? ""],
    ["on schedule, six components", schedule.state?.electricPower ?? null, schedule.state?.bindingLimit ?? schedule.refusal?.reason ?? ""],
  ];
  if (reduced) rows.push(["least power, trim level reduced", reduced.electricPower, ""]);
  return {
    kind: "table",
    id: "levels",
    caption: `Electric power by controls and trim level; ${takeoffMass.toFixed(2)} kg, centre of gravity ${(centre.x * 1000).toFixed(0)} mm forward of the datum`,
    columns: [{ label: "controls and level" }, { label: "electric power", quantity: "power" }, { label: "binds" }],
    rows,
  };
}
