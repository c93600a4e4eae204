import { test } from "vitest";
import { type CaseRow, column, readCases } from "../cases.ts";
import { checkAndRecord } from "../record.ts";
import { outputsOf } from "../run-analysis.ts";

interface Row {
  readonly liftCoefficient: number;
  readonly dragCoefficient: number;
  readonly momentCoefficient: number;
}

const degree = Math.PI / 180;
const area = 1.8;

function wing(deflection: number): Row {
  const { rows } = outputsOf<{ readonly rows: readonly Row[] }>("wing", {
    wing: {
      area,
      span: Math.sqrt(3.13 * area),
      section: { kind: "cambered", thickness: 0.1, camber: 0 },
      flaps: [{ from: 0, to: 0.484, chordFraction: 0.25, deflection: deflection * degree }],
    },
    method: { kind: "lifting-line", stations: 61 },
    airspeed: 92,
    angles: [0],
  });
  const [found] = rows;
  if (!found) throw new Error("no row");
  return found;
}

test("a plain flap lifts, drags and pitches about as measured on a wing of small aspect ratio", () => {
  const cases = readCases(new URL("cases.csv", import.meta.url)).map((row) => ({ row, computed: wing(column(row, "deflection_deg")) }));
  const flapped = cases.filter(({ row }) => row.place === "flap");
  const comparison = (quantity: string, name: string, field: keyof Row, bound: number, upTo: number) => ({
    quantity,
    error: "relative" as const,
    rows: flapped.map(({ row, computed }: { readonly row: CaseRow; readonly computed: Row }) => ({
      expected: column(row, name),
      computed: computed[field],
      ...(column(row, "deflection_deg") <= upTo ? { bounds: [-bound, bound] as const } : {}),
    })),
    tolerance: `±${100 * bound} % up to ${upTo}°`,
    note: "inboard flap at zero angle of attack",
    field,
    along: {
      name: "flap deflection",
      quantity: "angle" as const,
      values: flapped.map(({ row }) => column(row, "deflection_deg") * degree),
    },
  });
  checkAndRecord(new URL("./", import.meta.url), "johnson-hagerman-1950", [
    comparison("lift of a flap", "lift_increment", "liftCoefficient", 0.15, 60),
    comparison("moment of a flap", "moment_coefficient", "momentCoefficient", 0.25, 50),
    comparison("drag with a flap", "drag_coefficient", "dragCoefficient", 0.3, 60),
    {
      quantity: "drag without flap",
      error: "relative",
      rows: cases
        .filter(({ row }) => row.place === "clean")
        .map(({ row, computed }) => ({ expected: column(row, "drag_coefficient"), computed: computed.dragCoefficient })),
      tolerance: "reported",
      note: "another section of the same thickness",
      field: "dragCoefficient",
    },
  ]);
});
