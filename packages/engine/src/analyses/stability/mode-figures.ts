import type { Figure, NotablePoint, Series } from "../figures.ts";
import type { ModeOutput, StabilityCondition, StabilityOutputs } from "./output-schema.ts";

const neutral = { name: "neutral", value: 0, forbidden: "above", family: "control" } as const;

/** Roots that die away faster than this stand in the table alone: they would press the others into one column [1/s]. */
const fastest = -12;

/** One picture of roots per rotor mode. */
export function rootFigures({ conditions, chosen }: StabilityOutputs): readonly Figure[] {
  return byRotorMode(conditions).map(({ mode, flights }) => {
    const here = flights.includes(conditions[chosen] as StabilityCondition)
      ? (conditions[chosen] as StabilityCondition)
      : flights[flights.length - 1];
    const fast = flights.some(({ modes }) => modes.some(({ real }) => real < fastest));
    return {
      kind: "lines",
      id: mode === null ? "roots" : `roots-${mode}`,
      caption: `Roots of the linear motion${mode === null ? "" : `, ${mode}`}; to the right of zero a disturbance grows${fast ? `; faster ones than −${-fastest} 1/s stand in the table` : ""}`,
      plane: true,
      x: { label: "Growth rate", quantity: "growthRate" },
      y: { label: "Oscillation", quantity: "anglePerTime", unit: "rad/s" },
      series: namesOf(flights)
        .map((name) => path(name, flights))
        .filter(({ x }) => x.length > 0),
      notable: (here?.modes ?? [])
        .filter(isSlow)
        .map((found): NotablePoint => ({ name: found.name, x: found.real, y: found.imaginary, meaning: meaningOf(found) })),
      bounds: [{ ...neutral, axis: "x" }],
    };
  });
}

function isSlow({ real }: ModeOutput): boolean {
  return real >= fastest;
}

/** The way of a root through the flights; of one flight a stem down to its conjugate. */
function path(name: string, flights: readonly StabilityCondition[]): Series {
  const found = flights.flatMap(({ modes }) => modes.filter((mode) => mode.name === name && isSlow(mode)));
  const [first] = found;
  const points =
    found.length === 1 && first
      ? [[first.real, first.imaginary] as const, [first.real, 0] as const]
      : found.map((mode) => [mode.real, mode.imaginary] as const);
  return { name, meaning: first ? meaningOf(first) : "neutral", x: points.map(([x]) => x), y: points.map(([, y]) => y) };
}

function byRotorMode(
  conditions: readonly StabilityCondition[],
): readonly { mode: StabilityCondition["mode"]; flights: readonly StabilityCondition[] }[] {
  return [...new Set(conditions.map(({ mode }) => mode))]
    .map((mode) => ({ mode, flights: conditions.filter((condition) => condition.mode === mode && condition.modes.length > 0) }))
    .filter(({ flights }) => flights.length > 0);
}

function namesOf(flights: readonly StabilityCondition[]): readonly string[] {
  return [...new Set(flights.flatMap(({ modes }) => modes.map(({ name }) => name)))];
}

function meaningOf({ group }: ModeOutput): "wing" | "rotor" | "propellers" | "neutral" {
  if (group === "longitudinal") return "wing";
  if (group === "lateral") return "propellers";
  return group === "rotor" ? "rotor" : "neutral";
}

/** Growth rates over the conditions: those that grow or die away slowly, where one looks for trouble. */
export function growthFigures({ conditions, along }: StabilityOutputs): readonly Figure[] {
  const slow = -2;
  return byRotorMode(conditions)
    .filter(({ flights }) => flights.length > 1)
    .map(({ mode, flights }) => ({
      kind: "lines",
      id: mode === null ? "growth" : `growth-${mode}`,
      caption: `Growth rate of the slower modes${mode === null ? "" : `, ${mode}`}`,
      x: along === "airspeed" ? { label: "Airspeed", quantity: "speed" } : { label: "Factor", quantity: "dimensionless" },
      y: { label: "Growth rate", quantity: "growthRate" },
      series: namesOf(flights).flatMap((name): Series[] => {
        const found = flights.map(({ modes }) => modes.find((each) => each.name === name));
        const seen = found.filter((each) => each !== undefined);
        const [first] = seen;
        if (!first || Math.max(...seen.map(({ real }) => real)) < slow) return [];
        return [{ name, meaning: meaningOf(first), x: flights.map(({ at }) => at), y: found.map((each) => each?.real ?? null) }];
      }),
      bounds: [{ ...neutral, axis: "y" }],
    }));
}

/** The modes of the chosen condition, with what they are without the rotors' speed, and who takes part. */
export function modeTables({ conditions, chosen }: StabilityOutputs): readonly Figure[] {
  const here = conditions[chosen];
  if (!here || here.modes.length === 0) return [];
  const frozen = new Map(here.frozenModes.map((mode) => [mode.name, mode]));
  const rotors = here.frozenModes.length > 0;
  return [
    {
      kind: "table",
      id: "modes",
      caption: `Modes${here.mode === null ? "" : ` at ${here.airspeed.toFixed(0)} m/s, ${here.mode}`}`,
      columns: [
        { label: "Mode" },
        { label: "Motion" },
        { label: "Growth rate", quantity: "growthRate" },
        { label: "Half in", quantity: "time", unit: "s" },
        { label: "Double in", quantity: "time", unit: "s" },
        { label: "Period", quantity: "time", unit: "s" },
        { label: "Damping", quantity: "dimensionless" },
        ...(rotors ? [{ label: "Growth rate, rotor speed held", quantity: "growthRate" as const }] : []),
      ],
      rows: here.modes.map((mode) => [
        mode.name,
        mode.group,
        mode.real,
        mode.timeToHalf,
        mode.timeToDouble,
        mode.period,
        mode.damping,
        ...(rotors ? [frozen.get(mode.name)?.real ?? null] : []),
      ]),
    },
    {
      kind: "table",
      id: "participation",
      caption: "Which states make a mode",
      columns: [
        { label: "Mode" },
        { label: "First state" },
        { label: "Share", quantity: "dimensionless", unit: "%" },
        { label: "Second state" },
        { label: "Share of the second", quantity: "dimensionless", unit: "%" },
      ],
      rows: here.modes.map(({ name, participation: [first, second] }) => [
        name,
        first?.state ?? null,
        first?.share ?? null,
        second?.state ?? null,
        second?.share ?? null,
      ]),
    },
  ];
}
