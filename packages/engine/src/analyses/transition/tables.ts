import type { TableColumn, TableFigure } from "../figures.ts";
import type { TransitionOutputs, WayOutputs, WaySummary } from "./output-schema.ts";

type Cell = number | string | boolean | null;

const ids = { "hover to cruise": "out", "cruise to hover": "back" } as const;

const summaryColumns: readonly (TableColumn & { readonly of: (summary: WaySummary) => number })[] = [
  { label: "takes", quantity: "time", unit: "s", of: ({ duration }) => duration },
  { label: "distance", quantity: "length", of: ({ distance }) => distance },
  { label: "rises", quantity: "length", of: ({ heightGained }) => heightGained },
  { label: "sinks", quantity: "length", of: ({ heightLost }) => heightLost },
  { label: "peak power", quantity: "power", of: ({ peakPower }) => peakPower },
  { label: "within 5 % of it", quantity: "time", unit: "s", of: ({ peakDuration }) => peakDuration },
  { label: "above both ends", quantity: "time", unit: "s", of: ({ timeAboveSteady }) => timeAboveSteady },
  { label: "clutch at", quantity: "speed", of: ({ clutchAirspeed }) => clutchAirspeed },
  { label: "with torque", quantity: "torque", of: ({ clutchTorque }) => clutchTorque },
  { label: "slowest rotor", quantity: "speed", of: ({ slowestTipSpeed }) => slowestTipSpeed },
  { label: "fastest rotor", quantity: "speed", of: ({ fastestTipSpeed }) => fastestTipSpeed },
  { label: "acceleration", quantity: "acceleration", of: ({ largestAcceleration }) => largestAcceleration },
];

export function summaryTable({ ways }: TransitionOutputs): TableFigure {
  return {
    kind: "table",
    id: "summary",
    caption: "Both ways in numbers",
    columns: [{ label: "way" }, ...summaryColumns.map(({ of: _, ...column }) => column), { label: "not to the end because" }],
    rows: ways.map(({ way, summary, refusal }): Cell[] => [
      way,
      ...summaryColumns.map(({ of }) => (summary ? of(summary) : null)),
      refusal,
    ]),
  };
}

export function limitTable({ way, limits }: WayOutputs): TableFigure {
  return {
    kind: "table",
    id: `${ids[way]}-limits`,
    caption: `What is used of every limit, ${way}`,
    columns: [
      { label: "limit" },
      { label: "kind" },
      { label: "used", quantity: "dimensionless", unit: "%" },
      { label: "at", quantity: "time", unit: "s" },
      { label: "beyond it for", quantity: "time", unit: "s" },
      { label: "permitted" },
    ],
    rows: limits.map(({ name, family, share, at, beyond, kept }): Cell[] => [name, family, share, at, beyond, kept]),
  };
}

export function energyTable({ ways }: TransitionOutputs): TableFigure {
  return {
    kind: "table",
    id: "energy",
    caption: "Balance of energy: what motion, height and rotors gained is the work done on them",
    columns: [
      { label: "way" },
      { label: "into motion", quantity: "energy" },
      { label: "into height", quantity: "energy" },
      { label: "into the rotors", quantity: "energy" },
      { label: "work on the airframe", quantity: "energy" },
      { label: "of the air on the shafts", quantity: "energy" },
      { label: "of the drives", quantity: "energy" },
      { label: "missing", quantity: "dimensionless", unit: "%" },
      { label: "drawn from the pack", quantity: "energy" },
    ],
    rows: ways.flatMap(({ way, energy }): Cell[][] =>
      energy
        ? [
            [
              way,
              energy.kinetic,
              energy.height,
              energy.rotors,
              energy.airframeWork,
              energy.shaftWork,
              energy.driveWork,
              energy.gap,
              energy.electricEnergy,
            ],
          ]
        : [],
    ),
  };
}
