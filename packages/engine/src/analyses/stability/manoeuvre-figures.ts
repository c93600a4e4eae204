import type { Figure, ProfilePanel } from "../figures.ts";
import type { ManoeuvreOutput, StabilityOutputs } from "./output-schema.ts";

/** What push-over, pull-up and gust do, over time and in numbers. */
export function manoeuvreFigures({ manoeuvres }: StabilityOutputs): readonly Figure[] {
  if (manoeuvres.length === 0) return [];
  const names = [...new Set(manoeuvres.map(({ name }) => name))];
  return [
    ...names.map((name) =>
      courses(
        name,
        manoeuvres.filter((each) => each.name === name),
      ),
    ),
    summary(manoeuvres),
  ];
}

function courses(name: string, flown: readonly ManoeuvreOutput[]): Figure {
  const panel = (y: ProfilePanel["y"], values: (each: ManoeuvreOutput) => readonly number[]): ProfilePanel => ({
    y,
    series: flown.map((each) => ({
      name: each.mode.replace("-", " "),
      meaning: each.mode === "clutch-open" ? "mode.autorotating" : "mode.driven",
      x: each.times,
      y: values(each),
    })),
  });
  const speed = flown[0]?.airspeed ?? 0;
  return {
    kind: "profile",
    id: `manoeuvre-${name}`,
    caption: `${name.charAt(0).toUpperCase()}${name.slice(1)} from level flight at ${speed.toFixed(0)} m/s, reference controller`,
    x: { label: "Time", quantity: "time", unit: "s" },
    panels: [
      panel({ label: "Load factor", quantity: "dimensionless" }, (each) => each.loadFactor),
      panel({ label: "Rotor speed", quantity: "rotationRate" }, (each) => each.rotorRate),
      panel({ label: "Pitch", quantity: "angle" }, (each) => each.pitch),
      panel({ label: "Height", quantity: "length", datum: "above the start" }, (each) => each.height),
    ],
  };
}

function summary(manoeuvres: readonly ManoeuvreOutput[]): Figure {
  return {
    kind: "table",
    id: "manoeuvres",
    caption: "Push-over, pull-up and gust",
    columns: [
      { label: "Manoeuvre" },
      { label: "Rotor" },
      { label: "Least load factor", quantity: "dimensionless" },
      { label: "Largest load factor", quantity: "dimensionless" },
      { label: "Lowest rotor speed", quantity: "rotationRate" },
      { label: "Of that at the start", quantity: "dimensionless", unit: "%" },
      { label: "Recovered in", quantity: "time", unit: "s" },
      { label: "Height gained", quantity: "length", unit: "m" },
      { label: "Ended" },
    ],
    rows: manoeuvres.map((each) => [
      each.name,
      each.mode,
      each.lowestLoadFactor,
      each.highestLoadFactor,
      each.lowestRotorRate,
      each.lowestRotorShare,
      each.timeToRecover,
      each.heightChange,
      each.stopped ?? "followed to the end",
    ]),
  };
}
