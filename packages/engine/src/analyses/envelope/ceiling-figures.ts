import type { Border, LinesFigure, Series } from "../figures.ts";
import { blockWords } from "./block-words.ts";
import { altitudeAxis } from "./picture-axes.ts";
import type { CeilingRow, EnvelopeOutputs } from "./schema.ts";

const kinds = ["hover", "hover near the ground", "service"] as const;
const meanings: Readonly<Record<CeilingRow["kind"], Series["meaning"]>> = {
  hover: "mode.driven",
  "hover near the ground": "rotor",
  service: "wing",
};

/** Ceilings over the day's temperature, of the pack in question; nothing where only one day was looked at. */
export function ceilingPictures(outputs: EnvelopeOutputs): LinesFigure[] {
  const own = outputs.ceilings.filter(({ blocks, altitude }) => blocks === outputs.now.blocks && altitude !== null);
  const days = [...new Set(own.map(({ temperatureOffset }) => temperatureOffset))].sort((a, b) => a - b);
  if (days.length < 2) return [];
  return [
    {
      kind: "lines",
      id: "ceilings-over-temperature",
      caption: `Ceilings over the day's temperature, ${blockWords(outputs.now.blocks)}; they look beyond the altitude limit`,
      x: { label: "air temperature minus standard", quantity: "temperatureDifference" },
      y: altitudeAxis,
      series: kinds.flatMap((kind): Series[] => {
        const rows = own.filter((row) => row.kind === kind).sort((a, b) => a.temperatureOffset - b.temperatureOffset);
        if (rows.length === 0) return [];
        return [
          { name: kind, meaning: meanings[kind], x: rows.map((row) => row.temperatureOffset), y: rows.map(({ altitude }) => altitude) },
        ];
      }),
      bounds: [{ name: "altitude limit", axis: "y", value: outputs.altitudeLimit, forbidden: "above", family: "rule" }],
      borders: airLines(outputs, days),
    },
  ];
}

/** Altitudes beyond which the air of the day is too cold or too hot for file, cells or payload. */
function airLines({ airBorders }: EnvelopeOutputs, days: readonly number[]): Border[] {
  const names = [...new Set(airBorders.map(({ limit }) => limit))].filter((name) => name !== "altitude limit");
  return names.flatMap((name): Border[] => {
    const points = days.flatMap((day) => airBorders.filter((border) => border.limit === name && border.temperatureOffset === day));
    const [first] = points;
    if (!first || points.length < 2) return [];
    return [
      {
        name,
        x: points.map(({ temperatureOffset }) => temperatureOffset),
        y: points.map(({ altitude }) => altitude),
        forbidden: first.forbidden === "above" ? "left" : "right",
        family: first.family,
      },
    ];
  });
}
