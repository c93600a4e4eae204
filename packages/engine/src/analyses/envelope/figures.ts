import type { Bound, Figure, LinesFigure, Meaning, NotablePoint, Region, Series } from "../figures.ts";
import { blockWords } from "./block-words.ts";
import { borderName } from "./border-name.ts";
import { ceilingPictures } from "./ceiling-figures.ts";
import { altitudeAxis, speedAxis } from "./picture-axes.ts";
import { flightRegions } from "./regions.ts";
import type { ClimbRow, EnvelopeOutputs, EnvelopeRow } from "./schema.ts";
import { borderTable, ceilingTable, rowTable } from "./tables.ts";

const modes = ["clutch-closed", "clutch-open"] as const;
const modeWords = { "clutch-closed": "clutch closed", "clutch-open": "clutch open" } as const;

/** Pictures of the envelope: where it flies in each mode, how it climbs, how high it goes, how fast its rotor may turn; and the numbers. */
export function envelopeFigures(outputs: EnvelopeOutputs): readonly Figure[] {
  const flown = modes.filter((mode) => outputs.rows.some((row) => row.mode === mode));
  const regions = outputs.altitudes.length > 1 ? flown.map((mode) => regionPicture(outputs, mode, flown.length > 1)) : [];
  const climb = outputs.climb.length > 0 ? [bestClimbPicture(outputs), climbGrid(outputs)] : [];
  return [
    ...regions,
    ...climb,
    ...ceilingPictures(outputs),
    ...rotorSpeedPicture(outputs),
    ceilingTable(outputs),
    borderTable(outputs),
    rowTable(outputs),
  ];
}

function regionPicture(outputs: EnvelopeOutputs, mode: EnvelopeRow["mode"], isOneOfTwo: boolean): LinesFigure {
  const what = isOneOfTwo ? `level flight, ${modeWords[mode]}` : "level flight";
  const { blocks, temperatureOffset } = outputs.now;
  const own = flightRegions(outputs, blocks, temperatureOffset, mode);
  const packs = [...new Set(outputs.rows.map((row) => row.blocks))].filter((pack) => pack !== blocks);
  const days = [...new Set(outputs.rows.map((row) => row.temperatureOffset))].filter((day) => day !== temperatureOffset);
  const others = [
    ...packs.map((pack) => ({ pack, day: temperatureOffset, name: blockWords(pack) })),
    ...days.map((day) => ({ pack: blocks, day, name: dayWords(day).slice(2) })),
  ];
  return {
    kind: "lines",
    id: `region-${mode}`,
    caption: `Level flight${isOneOfTwo ? `, ${modeWords[mode]}` : ""}, ${blockWords(blocks)}${dayWords(temperatureOffset)}: each border by the limit that makes it; thin lines are other packs and days`,
    x: speedAxis,
    y: altitudeAxis,
    plane: true,
    regions: own.map(
      ({ x, y }): Region => ({
        name: what,
        meaning: mode === "clutch-closed" ? "mode.driven" : "mode.autorotating",
        x,
        y,
      }),
    ),
    borders: own.flatMap(({ borders }) => borders),
    bounds: airBounds(outputs),
    series: others.flatMap(({ pack, day, name }, i) =>
      flightRegions(outputs, pack, day, mode).map(
        ({ x, y }): Series => ({
          name,
          meaning: (["ordered.2", "ordered.3", "ordered.4", "ordered.1"] as const)[i % 4] as Meaning,
          x: [...x, x[0] as number],
          y: [...y, y[0] as number],
          weight: "thin",
        }),
      ),
    ),
    notable: notableSpeeds(outputs, mode),
  };
}

export function dayWords(offset: number): string {
  if (offset === 0) return ", standard day";
  return `, ${Math.abs(offset)} K ${offset > 0 ? "warmer" : "colder"} than standard`;
}

function airBounds({ airBorders, now, altitudes }: EnvelopeOutputs): Bound[] {
  const top = Math.max(...altitudes);
  return airBorders
    .filter(({ temperatureOffset, altitude }) => temperatureOffset === now.temperatureOffset && altitude <= top + 1e-9)
    .map(({ limit, altitude, forbidden, family }) => ({ name: limit, axis: "y", value: altitude, forbidden, family }));
}

/** The fastest flight of a mode, and the slowest with the clutch open, at whatever altitude. */
export function notableSpeeds(outputs: EnvelopeOutputs, mode: EnvelopeRow["mode"]): NotablePoint[] {
  const { blocks, temperatureOffset } = outputs.now;
  const own = outputs.borders.filter(
    (border) => border.blocks === blocks && border.temperatureOffset === temperatureOffset && border.mode === mode,
  );
  const fastest = own.filter(({ side }) => side === "fastest").sort((a, b) => b.airspeed - a.airspeed)[0];
  const slowest = own.filter(({ side }) => side === "slowest").sort((a, b) => a.airspeed - b.airspeed)[0];
  const point = (name: string, at: typeof fastest): NotablePoint[] =>
    at ? [{ name, x: at.airspeed, y: at.altitude, meaning: mode === "clutch-closed" ? "mode.driven" : "mode.autorotating" }] : [];
  return [...point("fastest", fastest), ...point("slowest", slowest)];
}

function packMeaning(packs: readonly number[], blocks: number): Meaning {
  const place = Math.min(3, packs.indexOf(blocks));
  return (["ordered.1", "ordered.2", "ordered.3", "ordered.4"] as const)[place] ?? "neutral";
}

function bestClimbPicture(outputs: EnvelopeOutputs): LinesFigure {
  const day = outputs.now.temperatureOffset;
  const packs = [...new Set(outputs.climb.map(({ blocks }) => blocks))].sort((a, b) => a - b);
  return {
    kind: "lines",
    id: "best-climb",
    caption: `Best steady climb over altitude${dayWords(day)}, at the speed and in the mode that climbs fastest, a line a pack`,
    x: altitudeAxis,
    y: { label: "rate of climb", quantity: "speed" },
    series: packs.map((blocks) => {
      const rows = outputs.bestClimb.filter((row) => row.blocks === blocks && row.temperatureOffset === day);
      return {
        name: blockWords(blocks),
        meaning: packMeaning(packs, blocks),
        x: rows.map(({ altitude }) => altitude),
        y: rows.map(({ climbRate }) => climbRate),
      };
    }),
    bounds: [{ name: "climb limit", axis: "y", value: outputs.climbLimit, forbidden: "above", family: "rule" }],
    zeroBased: true,
  };
}

function climbGrid(outputs: EnvelopeOutputs): Figure {
  const own = outputs.climb.filter((row) => row.blocks === outputs.now.blocks && row.temperatureOffset === outputs.now.temperatureOffset);
  const xs = [...new Set(own.map(({ airspeed }) => airspeed))].sort((a, b) => a - b);
  const ys = [...new Set(own.map(({ altitude }) => altitude))].sort((a, b) => a - b);
  const value = (row: ClimbRow | undefined) => row?.climbRate ?? null;
  return {
    kind: "grid",
    id: "climb",
    caption: `Fastest steady climb, at most the aircraft's limit, ${blockWords(outputs.now.blocks)}${dayWords(outputs.now.temperatureOffset)}`,
    x: speedAxis,
    y: altitudeAxis,
    value: { label: "rate of climb", quantity: "speed" },
    xs,
    ys,
    values: ys.flatMap((altitude) =>
      xs.map((airspeed) => value(own.find((row) => row.altitude === altitude && row.airspeed === airspeed))),
    ),
  };
}

function rotorSpeedPicture({ rotorSpeeds, now, altitudes }: EnvelopeOutputs): LinesFigure[] {
  if (rotorSpeeds.length < 2) return [];
  const x = rotorSpeeds.map(({ airspeed }) => airspeed);
  const lows = rotorSpeeds.map(({ lowest }) => lowest);
  const highs = rotorSpeeds.map(({ highest }) => highest);
  const lines = (forbidden: "left" | "right", at: readonly number[], name: (i: number) => string, family: (i: number) => Bound["family"]) =>
    x.slice(0, -1).map((_, i) => ({
      name: name(i + 1),
      x: [x[i] as number, x[i + 1] as number],
      y: [at[i] as number, at[i + 1] as number],
      forbidden,
      family: family(i + 1),
    }));
  const low = lines(
    "right",
    lows,
    (i) => borderName(rotorSpeeds[i]?.lowestLimit ?? ""),
    (i) => rotorSpeeds[i]?.lowestFamily ?? "strength",
  );
  const high = lines(
    "left",
    highs,
    (i) => borderName(rotorSpeeds[i]?.highestLimit ?? ""),
    (i) => rotorSpeeds[i]?.highestFamily ?? "strength",
  );
  return [
    {
      kind: "lines",
      id: "rotor-speed",
      caption: `Tip speeds at which level flight is possible, clutch closed, ${blockWords(now.blocks)}${dayWords(now.temperatureOffset)}, ${Math.round(altitudes[0] ?? 0)} m above sea`,
      x: speedAxis,
      y: { label: "tip speed", quantity: "speed" },
      plane: true,
      regions: [{ name: "level flight", meaning: "rotor", x: [...x, ...[...x].reverse()], y: [...lows, ...[...highs].reverse()] }],
      borders: [...joined(low), ...joined(high)],
      series: [],
    },
  ];
}

type Line = NonNullable<LinesFigure["borders"]>[number];

/** Neighbouring pieces of one name made one line. */
function joined(pieces: readonly Line[]): Line[] {
  const lines: Line[] = [];
  for (const piece of pieces) {
    const last = lines[lines.length - 1];
    if (last?.name === piece.name)
      lines[lines.length - 1] = { ...last, x: [...last.x, ...piece.x.slice(1)], y: [...last.y, ...piece.y.slice(1)] };
    else lines.push(piece);
  }
  return lines;
}
