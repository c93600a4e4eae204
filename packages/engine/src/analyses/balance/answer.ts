import type { Answer, Limit } from "../contract.ts";
import { reading, type Token, words } from "../tokens.ts";
import type { BalanceOutputs, BalanceRow } from "./output-schema.ts";
import { marginOf } from "./outputs.ts";

const millimetres = { unit: "mm" };

function called({ blocks, payload, place }: BalanceRow): string {
  if (place === "no payload") return `${blocks} blocks without payload`;
  return `${blocks} blocks and ${payload}${place === "payload bay" ? "" : ` (${place})`}`;
}

/** "With 13 blocks and parts it is 20 kg, its centre of gravity 4 mm …; all of 9 loadings lie between the limits, nearest …" */
export function balanceAnswer(outputs: BalanceOutputs): Answer {
  const { rows, now, worst } = outputs;
  const row = rows[now];
  if (row === undefined || worst === null) {
    return {
      sentence: [words("Every loading is above the largest permitted take-off mass.")],
      brief: "every loading too heavy",
      met: false,
    };
  }
  const flown = rows.filter(({ tooHeavy }) => !tooHeavy);
  const inside = flown.filter((one) => marginOf(one) >= 0);
  const nearest = rows[worst] as BalanceRow;
  const met = inside.length === flown.length;
  const margin = marginOf(nearest);
  const side = nearest.foreMargin < nearest.aftMargin ? "foreMargin" : "aftMargin";
  const count = met
    ? `${flown.length === 1 ? "this loading lies" : `all ${flown.length} loadings lie`} between the limits, `
    : `${flown.length - inside.length} of ${flown.length} loadings lie outside the limits, `;
  const sentence: Token[] = [
    words(`With ${called(row)} it is `),
    reading(row.mass.value, "mass", `/rows/${now}/mass/value`),
    words(", its centre of gravity at "),
    reading(row.centre.x.value, "length", `/rows/${now}/centre/x/value`, millimetres),
    words(" ± "),
    reading(row.centre.x.halfWidth, "length", `/rows/${now}/centre/x/halfWidth`, millimetres),
    words(
      `, ${row.centre.x.value < 0 ? "aft" : "forward"} of the datum; ${count}${met ? "nearest" : "farthest out"} ${called(nearest)} with `,
    ),
    reading(margin, "length", `/rows/${worst}/${side}`, millimetres),
    words(` to the ${nearest.binding}${unsure(nearest)}.`),
    ...suspended(outputs),
  ];
  const distance = `${(Math.abs(margin) * 1000).toFixed(0)} mm`;
  const brief = met
    ? `${inside.length} of ${flown.length} balance · ${distance} left`
    : `${inside.length} of ${flown.length} balance · ${distance} beyond`;
  return { sentence, brief, met };
}

function unsure({ verdict }: BalanceRow): string {
  return verdict.endsWith("unsure") ? ", closer than its interval can tell" : "";
}

function suspended({ suspension }: BalanceOutputs): readonly Token[] {
  const off = suspension.findIndex(({ agrees }) => !agrees);
  if (suspension.length === 0) return [];
  if (off < 0) return [words(" Hung up it hung as these masses say.")];
  const row = suspension[off];
  if (row === undefined) return [];
  return [
    words(` Hung up (${row.id}) it did not hang as these masses say: the angle means a centre of gravity at `),
    reading(row.measuredCentre.value, "length", `/suspension/${off}/measuredCentre/value`, millimetres),
    words(", they give "),
    reading(row.centre.value, "length", `/suspension/${off}/centre/value`, millimetres),
    words("."),
  ];
}

/** Share of the way from the middle of the range to each limit, of the row nearest to it; and of the largest mass. */
export function balanceLimits(outputs: BalanceOutputs): readonly Limit[] {
  const flown = outputs.rows.filter(({ tooHeavy }) => !tooHeavy);
  const share = (row: BalanceRow, side: "fore" | "aft") => {
    const middle = (row.fore.x + row.aft.x) / 2;
    return (row.centre.x.value - middle) / (row[side].x - middle);
  };
  const found = (["fore", "aft"] as const).flatMap((side) => {
    const nearest = flown.toSorted((a, b) => share(b, side) - share(a, side))[0];
    if (nearest === undefined) return [];
    return [
      {
        name: `centre of gravity, ${side} limit`,
        family: nearest[side].from === "aircraft file" ? ("rule" as const) : ("control" as const),
        share: Math.max(0, share(nearest, side)),
        side: side === "fore" ? ("upper" as const) : ("lower" as const),
        where: called(nearest),
      },
    ];
  });
  const heaviest = outputs.rows.toSorted((a, b) => b.mass.value - a.mass.value)[0];
  const mass = heaviest && {
    name: "take-off mass",
    family: "rule" as const,
    share: heaviest.mass.value / outputs.largestMass,
    side: "upper" as const,
    where: called(heaviest),
  };
  const all = [...found, ...(mass ? [mass] : [])];
  const most = Math.max(...all.map((limit) => limit.share));
  return all.map((limit) => ({ ...limit, binding: limit.share === most }));
}
