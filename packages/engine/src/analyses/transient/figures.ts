import type { Figure, ProfilePanel } from "../figures.ts";
import type { TransientOutputs } from "./output-schema.ts";

/** The course of the flight through the step, and what it came to. */
export function transientFigures(outputs: TransientOutputs): readonly Figure[] {
  return [course(outputs), rotorTable(outputs), summary(outputs), controlTable(outputs)];
}

function course({ samples, rotors, step, stepAt }: TransientOutputs): Figure {
  const times = samples.map(({ time }) => time);
  type Row = TransientOutputs["samples"][number];
  const panel = (
    y: ProfilePanel["y"],
    series: readonly (readonly [string, (row: Row) => number | null])[],
    more: Partial<ProfilePanel> = {},
  ): ProfilePanel => ({
    y,
    series: series.map(([name, value], i) => ({
      name,
      meaning: (["rotor", "wing", "propellers"] as const)[i] ?? "neutral",
      x: times,
      y: samples.map(value),
    })),
    ...more,
  });
  const [rotor] = rotors;
  return {
    kind: "profile",
    id: "course",
    caption: `Course of the flight: ${step}`,
    x: { label: "Time", quantity: "time", unit: "s" },
    panels: [
      ...(rotor
        ? [
            panel({ label: "Rotor speed", quantity: "rotationRate" }, [[rotor.id, (row) => row.rotorRate]], {
              bounds: [
                { name: "lowest rotor speed", axis: "y", value: rotor.permittedLowest, forbidden: "below", family: "strength" },
                { name: "highest rotor speed", axis: "y", value: rotor.permittedHighest, forbidden: "above", family: "strength" },
              ],
            }),
          ]
        : []),
      panel({ label: "Attitude", quantity: "angle" }, [
        ["roll", ({ roll }) => roll],
        ["pitch", ({ pitch }) => pitch],
        ["yaw", ({ yaw }) => yaw],
      ]),
      panel({ label: "Load factor", quantity: "dimensionless" }, [["load factor", ({ loadFactor }) => loadFactor]]),
      panel({ label: "Height", quantity: "length", datum: "above the start" }, [["height", ({ height }) => height]]),
      panel({ label: "Speed", quantity: "speed" }, [
        ["climb", ({ climbRate }) => climbRate],
        ["airspeed", ({ airspeed }) => airspeed],
      ]),
      panel({ label: "Electric power", quantity: "power" }, [["drawn from the pack", ({ electricPower }) => electricPower]]),
    ],
    notable: [{ name: "step", x: stepAt }],
  };
}

function rotorTable({ rotors }: TransientOutputs): Figure {
  return {
    kind: "table",
    id: "rotors",
    caption: "Rotor speed through the step",
    columns: [
      { label: "Rotor" },
      { label: "Before", quantity: "rotationRate" },
      { label: "Lowest", quantity: "rotationRate" },
      { label: "Of that before", quantity: "dimensionless", unit: "%" },
      { label: "At", quantity: "time", unit: "s" },
      { label: "Highest", quantity: "rotationRate" },
      { label: "At the end", quantity: "rotationRate" },
      { label: "Lowest permitted", quantity: "rotationRate" },
      { label: "Highest permitted", quantity: "rotationRate" },
      { label: "Energy over power before", quantity: "time", unit: "s" },
    ],
    rows: rotors.map((each) => [
      each.id,
      each.start,
      each.lowest,
      each.lowestShare,
      each.lowestAt,
      each.highest,
      each.end,
      each.permittedLowest,
      each.permittedHighest,
      each.decay,
    ]),
  };
}

function summary(outputs: TransientOutputs): Figure {
  return {
    kind: "table",
    id: "summary",
    caption: "What it came to",
    columns: [
      { label: "Recovered" },
      { label: "In", quantity: "time", unit: "s" },
      { label: "Peak roll", quantity: "angle" },
      { label: "Peak pitch", quantity: "angle" },
      { label: "Peak rate", quantity: "anglePerTime" },
      { label: "Least load factor", quantity: "dimensionless" },
      { label: "Largest load factor", quantity: "dimensionless" },
      { label: "Height lost", quantity: "length", unit: "m" },
      { label: "Height lost to recovery", quantity: "length", unit: "m" },
      { label: "Sink at the end", quantity: "speed" },
    ],
    rows: [
      [
        outputs.recovered ? "yes" : (outputs.stopped ?? "no"),
        outputs.timeToRecover,
        outputs.peakRoll,
        outputs.peakPitch,
        outputs.peakRate,
        outputs.lowestLoadFactor,
        outputs.highestLoadFactor,
        outputs.heightLost,
        outputs.heightLostToRecovery,
        outputs.sinkRateAtEnd,
      ],
    ],
  };
}

function controlTable({ controls }: TransientOutputs): Figure {
  return {
    kind: "table",
    id: "controls",
    caption: "Controls: how much of their range and rate was used",
    columns: [
      { label: "Control" },
      { label: "Range used", quantity: "dimensionless", unit: "%" },
      { label: "Time at its rate", quantity: "dimensionless", unit: "%" },
      { label: "Time asked beyond its stop", quantity: "dimensionless", unit: "%" },
    ],
    rows: controls.map(({ id, rangeUsed, atRate, atStop }) => [id, rangeUsed, atRate, atStop]),
  };
}
