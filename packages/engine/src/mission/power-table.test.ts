import { describe, expect, it } from "vitest";
import type { PowerQuery } from "./power-lookup.ts";
import type { PowerAnswer, PowerRequest, PowerSource } from "./power-source.ts";
import { type ModeChoice, powerTable } from "./power-table.ts";

const cheaper: ModeChoice = { modes: ["clutch-closed", "clutch-open"], take: "cheapest" };

/** A smooth law: closed flies everywhere, open from 12 m/s up and cheaper from 20 m/s. */
function lawSource(): PowerSource & { readonly asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    limits: [{ name: "stall margin", family: "air" }],
    power(request) {
      const { forward, climb, altitude, mode, loading } = request;
      asked.push(`${loading} ${mode} ${forward} ${climb} ${altitude}`);
      return lawPower(request);
    },
    powerFrom: lawPower,
  };
}

function lawPower({ forward, climb, altitude, mode }: PowerRequest): PowerAnswer {
  if (mode === "clutch-open" && forward < 12) return { kind: "no-equilibrium", limit: { name: "propeller thrust", family: "power" } };
  const open = mode === "clutch-open" ? 4 * (20 - forward) : 0;
  return {
    kind: "flies",
    electricPower: 1500 - 60 * forward + 2.2 * forward ** 2 + 200 * climb + 8 * climb ** 2 + 0.05 * altitude + open,
    rotorShaftPower: 1000,
    stallMargin: 1.3,
    shares: [0.9],
    trace: forward,
  };
}

const axes = {
  legs: { speeds: [18, 25], climbs: [-2, -1, 0, 1.5, 3], altitudes: [0, 150, 300] },
  maneuver: { speeds: [0, 3, 6, 9, 12, 15, 18], climbs: [-2, 0, 3], altitudes: [0, 150, 300] },
};

function tableFor(query: PowerQuery, choice: ModeChoice = cheaper) {
  const source = lawSource();
  return { table: powerTable(source, axes, [{ query, choice }], () => {}), source };
}

describe("power table", () => {
  it("level at a commanded speed and a tabulated height is the exact flight, priced once a mode", () => {
    const query = { part: "legs", loading: 0, speed: 25, climb: 0, altitude: 150 } as const;
    const { table, source } = tableFor(query);
    expect(source.asked).toHaveLength(2);
    const power = table.at(query, cheaper);
    expect(power).toMatchObject({ kind: "flies", mode: "clutch-open" });
    expect(power.kind === "flies" && power.electricPower).toBeCloseTo(1500 - 60 * 25 + 2.2 * 625 + 7.5 - 20, 9);
  });

  it("keeps the path speed in a climb: the horizontal speed of the node gives way", () => {
    const { source } = tableFor({ part: "legs", loading: 0, speed: 25, climb: 3, altitude: 0 });
    expect(source.asked[0]).toContain(`${Math.sqrt(625 - 9)} 3 0`);
  });

  it("interpolates smoothly between rates of climb and heights", () => {
    const query = { part: "legs", loading: 0, speed: 18, climb: 0.8, altitude: 60 } as const;
    const power = tableFor(query).table.at(query, cheaper);
    const forward = Math.sqrt(18 ** 2 - 0.8 ** 2);
    const exact = 1500 - 60 * forward + 2.2 * forward ** 2 + 160 + 8 * 0.64 + 3;
    expect(power.kind === "flies" && Math.abs(power.electricPower / exact - 1)).toBeLessThan(2e-4);
  });

  it("takes the mode that flies, and compares only where both do", () => {
    const slow = { part: "maneuver", loading: 0, speed: 4, climb: 0, altitude: 0 } as const;
    expect(tableFor(slow).table.at(slow, cheaper)).toMatchObject({ kind: "flies", mode: "clutch-closed" });
    const fast = { part: "legs", loading: 0, speed: 18, climb: 0, altitude: 0 } as const;
    expect(tableFor(fast).table.at(fast, cheaper)).toMatchObject({ kind: "flies", mode: "clutch-closed" });
  });

  it("a mode that does not fly at a neighbouring node is not used between them, and the limit is named", () => {
    const open: ModeChoice = { modes: ["clutch-open"], take: "cheapest" };
    const query = { part: "maneuver", loading: 0, speed: 11, climb: 0, altitude: 0 } as const;
    expect(tableFor(query, open).table.at(query, open)).toMatchObject({ kind: "no-equilibrium", limit: { name: "propeller thrust" } });
  });

  it("falls back to the nearest nodes where a farther one does not fly", () => {
    const open: ModeChoice = { modes: ["clutch-open"], take: "cheapest" };
    const query = { part: "maneuver", loading: 0, speed: 13.5, climb: 0, altitude: 0 } as const;
    const power = tableFor(query, open).table.at(query, open);
    const law = (forward: number) => 1500 - 60 * forward + 2.2 * forward ** 2 + 4 * (20 - forward);
    expect(power.kind === "flies" && power.electricPower).toBeCloseTo((law(12) + law(15)) / 2, 9);
  });

  it("keeps the cheaper of two local optima: the way back finds what the way out missed", () => {
    const query = { part: "legs", loading: 0, speed: 25, climb: 1, altitude: 0 } as const;
    const source = lawSource();
    const dear: PowerSource = {
      ...source,
      power: (request) => {
        const answer = lawPower(request);
        return answer.kind === "flies" && request.climb === 1.5 ? { ...answer, electricPower: 2 * answer.electricPower } : answer;
      },
    };
    const expected = [{ query, choice: cheaper }];
    const plain = powerTable(source, axes, expected, () => {}).at(query, cheaper);
    expect(powerTable(dear, axes, expected, () => {}).at(query, cheaper)).toEqual(plain);
  });

  it("solves nodes in the same order whatever the order of the queries", () => {
    const queries: PowerQuery[] = [
      { part: "legs", loading: 0, speed: 25, climb: 1, altitude: 20 },
      { part: "maneuver", loading: 0, speed: 7, climb: 2, altitude: 10 },
      { part: "legs", loading: 1, speed: 18, climb: 0, altitude: 20 },
    ];
    const order = (list: readonly PowerQuery[]) => {
      const source = lawSource();
      powerTable(
        source,
        axes,
        list.map((query) => ({ query, choice: cheaper })),
        () => {},
      );
      return source.asked;
    };
    expect(order([...queries].reverse())).toEqual(order(queries));
  });
});
