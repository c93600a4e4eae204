import type { TableFigure } from "../figures.ts";
import type { EnvelopeOutputs } from "./schema.ts";

const height = { quantity: "length", datum: "above sea" } as const;

/** Ceilings of every pack and day. */
export function ceilingTable({ ceilings, groundEffect }: EnvelopeOutputs): TableFigure {
  const near = groundEffect
    ? `; near the ground: hub ${groundEffect.height.toFixed(2)} m above it, ${((groundEffect.thrustRatio - 1) * 100).toFixed(1)} % more thrust at equal induced power`
    : "";
  return {
    kind: "table",
    id: "ceilings",
    caption: `Ceilings and what ends them, whatever the altitude limit; service is a climb of 0.5 m/s${near}`,
    columns: [
      { label: "pack, blocks" },
      { label: "day, off standard", quantity: "temperatureDifference" },
      { label: "ceiling" },
      { label: "altitude", ...height },
      { label: "limit" },
    ],
    rows: ceilings.map(({ blocks, temperatureOffset, kind, altitude, isSought, limit }) => [
      String(blocks),
      temperatureOffset,
      kind,
      altitude,
      isSought ? limit : "flies at the highest altitude looked at",
    ]),
  };
}

/** Every border with its limit. */
export function borderTable({ borders }: EnvelopeOutputs): TableFigure {
  return {
    kind: "table",
    id: "borders",
    caption: "Where level flight begins and ends over airspeed, and the limit that makes it",
    columns: [
      { label: "pack, blocks" },
      { label: "day, off standard", quantity: "temperatureDifference" },
      { label: "altitude", ...height },
      { label: "clutch" },
      { label: "end" },
      { label: "true airspeed", quantity: "speed" },
      { label: "limit" },
      { label: "family" },
    ],
    rows: borders.map((border) => [
      String(border.blocks),
      border.temperatureOffset,
      border.altitude,
      border.mode === "clutch-closed" ? "closed" : "open",
      border.side,
      border.airspeed,
      border.limit,
      border.family,
    ]),
  };
}

/** Everything, row by row. */
export function rowTable({ rows }: EnvelopeOutputs): TableFigure {
  return {
    kind: "table",
    id: "rows",
    caption: "Every pack, day, altitude, mode and airspeed",
    columns: [
      { label: "pack, blocks" },
      { label: "day, off standard", quantity: "temperatureDifference" },
      { label: "altitude", ...height },
      { label: "clutch" },
      { label: "true airspeed", quantity: "speed" },
      { label: "state" },
      { label: "limit" },
      { label: "share of it", quantity: "dimensionless", unit: "%" },
      { label: "electric power", quantity: "power" },
      { label: "tip speed", quantity: "speed" },
      { label: "stall margin", quantity: "dimensionless" },
    ],
    rows: rows.map((row) => [
      String(row.blocks),
      row.temperatureOffset,
      row.altitude,
      row.mode === "clutch-closed" ? "closed" : "open",
      row.airspeed,
      row.state,
      row.limit,
      row.share,
      row.electricPower,
      row.tipSpeed,
      row.stallMargin,
    ]),
  };
}
