import type { Figure, Series } from "../figures.ts";
import type { StabilityCondition, StabilityOutputs } from "./output-schema.ts";

/** Static margins over airspeed, how the wing's lift slows a free rotor, and both in numbers. Nothing for derivatives. */
export function marginFigures({ conditions, along, centre }: StabilityOutputs): readonly Figure[] {
  if (along !== "airspeed") return [];
  const modes = [...new Set(conditions.map(({ mode }) => mode))];
  const meaning = (mode: StabilityCondition["mode"]) => (mode === "clutch-open" ? "mode.autorotating" : "mode.driven");
  const lines = (value: (condition: StabilityCondition) => number | null, name: string, weight: "full" | "thin"): readonly Series[] =>
    modes.flatMap((mode) => {
      const flights = conditions.filter((condition) => condition.mode === mode);
      const y = flights.map(value);
      if (y.every((each) => each === null)) return [];
      return [{ name: `${name}, ${mode}`, meaning: meaning(mode), weight, x: flights.map(({ airspeed }) => airspeed), y }];
    });
  const margins = [
    ...lines(({ incidenceMargin }) => incidenceMargin, "incidence", "full"),
    ...lines(({ speedMargin }) => speedMargin, "speed", "thin"),
  ];
  const free = conditions.filter(({ mode, rotorRate }) => mode === "clutch-open" && rotorRate !== null);
  return [
    ...(margins.length > 0 ? [marginFigure(margins)] : []),
    ...(free.length > 1 ? [slowingFigure(free)] : []),
    {
      kind: "table",
      id: "flights",
      caption: `Level flights${centre === null ? "" : `; centre of gravity ${(centre * 1000).toFixed(0)} mm forward of the datum`}`,
      columns: [
        { label: "Airspeed", quantity: "speed" },
        { label: "Rotor" },
        { label: "Slowest or growing mode" },
        { label: "Growth rate", quantity: "growthRate" },
        { label: "Margin of incidence", quantity: "length", unit: "mm" },
        { label: "Margin of speed", quantity: "length", unit: "mm" },
        { label: "Rearmost centre", quantity: "length", unit: "mm" },
        { label: "Thrust line above centre", quantity: "length", unit: "mm" },
        { label: "Rotor speed", quantity: "rotationRate" },
        { label: "Wing lift", quantity: "dimensionless", unit: "%" },
      ],
      rows: conditions.map((flight) => {
        const [slowest] = [...flight.modes].sort((a, b) => b.real - a.real);
        return [
          flight.airspeed,
          flight.mode,
          slowest?.name ?? flight.problem,
          slowest?.real ?? null,
          flight.incidenceMargin,
          flight.speedMargin,
          flight.rearmostCentre,
          flight.thrustLineHeight,
          flight.rotorRate,
          flight.wingLiftShare,
        ];
      }),
    },
  ];
}

function marginFigure(series: readonly Series[]): Figure {
  return {
    kind: "lines",
    id: "margins",
    caption: "Neutral points behind the centre of gravity: below zero it leaves by itself",
    x: { label: "Airspeed", quantity: "speed" },
    y: { label: "Static margin", quantity: "length", unit: "mm" },
    series,
    bounds: [{ name: "neutral", axis: "y", value: 0, forbidden: "below", family: "control" }],
  };
}

function slowingFigure(free: readonly StabilityCondition[]): Figure {
  return {
    kind: "lines",
    id: "rotor-slowing",
    caption: "Lift taken by the wings slows the free rotor",
    x: { label: "Lift of the surfaces over weight", quantity: "dimensionless", unit: "%" },
    y: { label: "Rotor speed", quantity: "rotationRate" },
    series: [
      {
        name: "level flights, clutch-open",
        meaning: "mode.autorotating",
        x: free.map(({ wingLiftShare }) => wingLiftShare ?? 0),
        y: free.map(({ rotorRate }) => rotorRate),
      },
    ],
    notable: free.map(({ airspeed, wingLiftShare, rotorRate }) => ({
      name: `${airspeed.toFixed(0)} m/s`,
      x: wingLiftShare ?? 0,
      y: rotorRate ?? 0,
    })),
  };
}
