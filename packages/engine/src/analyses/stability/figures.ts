import type { Figure, NotablePoint, ProfilePanel, Series } from "../figures.ts";
import type { ModeOutput, StabilityOutputs } from "./output-schema.ts";

const stateAxes = {
  u: { label: "Speed along", quantity: "speed" },
  w: { label: "Speed down", quantity: "speed" },
  v: { label: "Speed to the right", quantity: "speed" },
  q: { label: "Pitch rate", quantity: "anglePerTime" },
  p: { label: "Roll rate", quantity: "anglePerTime" },
  r: { label: "Yaw rate", quantity: "anglePerTime" },
  theta: { label: "Pitch", quantity: "angle" },
  phi: { label: "Roll", quantity: "angle" },
} as const;

/** Where the roots lie, how the aircraft answers a disturbance, and the modes in numbers. */
export function stabilityFigures(outputs: StabilityOutputs): readonly Figure[] {
  return [roots(outputs), modesTable(outputs), ...timesFigure(outputs), ...responses(outputs), participation(outputs)];
}

function roots({ conditions, chosen }: StabilityOutputs): Figure {
  const here = conditions[chosen]?.modes ?? [];
  const series = here.map((mode): Series => {
    const path = conditions.flatMap(({ modes }) => modes.filter(({ name }) => name === mode.name));
    // One condition: a stem down to its conjugate. Several: the way that the root takes.
    const points = path.length > 1 ? path.map(({ real, imaginary }) => [real, imaginary] as const) : stem(mode);
    return { name: mode.name, meaning: meaningOf(mode), x: points.map(([x]) => x), y: points.map(([, y]) => y) };
  });
  const notable = here.map((mode): NotablePoint => ({ name: mode.name, x: mode.real, y: mode.imaginary, meaning: meaningOf(mode) }));
  return {
    kind: "lines",
    id: "roots",
    caption: "Roots of the linear motion; to the right of zero a disturbance grows",
    x: { label: "Growth rate", quantity: "growthRate" },
    y: { label: "Oscillation", quantity: "anglePerTime", unit: "rad/s" },
    series,
    notable,
    bounds: [{ name: "neutral", axis: "x", value: 0, forbidden: "above", family: "control" }],
  };
}

function stem({ real, imaginary }: ModeOutput): readonly (readonly [number, number])[] {
  return [
    [real, imaginary],
    [real, 0],
  ];
}

function meaningOf({ group }: ModeOutput): "wing" | "rotor" | "propellers" | "neutral" {
  if (group === "longitudinal") return "wing";
  if (group === "lateral") return "propellers";
  return group === "rotor" ? "rotor" : "neutral";
}

function modesTable({ conditions, chosen }: StabilityOutputs): Figure {
  const here = conditions[chosen]?.modes ?? [];
  return {
    kind: "table",
    id: "modes",
    caption: "Modes",
    columns: [
      { label: "Mode" },
      { label: "Motion" },
      { label: "Growth rate", quantity: "growthRate" },
      { label: "Half in", quantity: "time", unit: "s" },
      { label: "Double in", quantity: "time", unit: "s" },
      { label: "Period", quantity: "time", unit: "s" },
      { label: "Damping", quantity: "dimensionless" },
      { label: "Natural frequency", quantity: "anglePerTime", unit: "rad/s" },
    ],
    rows: here.map((mode) => [
      mode.name,
      mode.group,
      mode.real,
      mode.timeToHalf,
      mode.timeToDouble,
      mode.period,
      mode.damping,
      mode.naturalFrequency,
    ]),
  };
}

/** Growth rate of every mode over the conditions. */
function timesFigure({ conditions, chosen, along }: StabilityOutputs): readonly Figure[] {
  if (conditions.length < 2) return [];
  const names = (conditions[chosen]?.modes ?? []).map(({ name }) => name);
  return [
    {
      kind: "lines",
      id: "growth",
      caption: "Growth rate of the modes",
      x: along === "airspeed" ? { label: "Airspeed", quantity: "speed" } : { label: "Factor", quantity: "dimensionless" },
      y: { label: "Growth rate", quantity: "growthRate" },
      series: names.map((name) => {
        const found = conditions.map(({ modes }) => modes.find((mode) => mode.name === name));
        const first = found.find((mode) => mode !== undefined);
        return {
          name,
          meaning: first ? meaningOf(first) : "neutral",
          x: conditions.map(({ at }) => at),
          y: found.map((mode) => mode?.real ?? null),
        };
      }),
      bounds: [{ name: "neutral", axis: "y", value: 0, forbidden: "above", family: "control" }],
    },
  ];
}

function responses({ response }: StabilityOutputs): readonly Figure[] {
  return response.map(({ group, times, states }) => ({
    kind: "profile",
    id: `response-${group}`,
    caption: `Linear response to a sharp gust, ${group}`,
    x: { label: "Time", quantity: "time", unit: "s" },
    panels: states.map(
      ({ state, values }): ProfilePanel => ({
        y: stateAxes[state as keyof typeof stateAxes] ?? { label: state, quantity: "dimensionless" },
        series: [{ name: state, meaning: group === "longitudinal" ? "wing" : "propellers", x: times, y: values }],
      }),
    ),
  }));
}

function participation({ conditions, chosen }: StabilityOutputs): Figure {
  const here = conditions[chosen]?.modes ?? [];
  return {
    kind: "table",
    id: "participation",
    caption: "Which states make a mode",
    columns: [
      { label: "Mode" },
      { label: "First state" },
      { label: "Share", quantity: "dimensionless", unit: "%" },
      { label: "Second state" },
      { label: "Share", quantity: "dimensionless", unit: "%" },
    ],
    rows: here.map(({ name, participation: [first, second] }) => [
      name,
      first?.state ?? null,
      first?.share ?? null,
      second?.state ?? null,
      second?.share ?? null,
    ]),
  };
}
