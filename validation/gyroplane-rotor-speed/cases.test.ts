import { beforeAll, expect, test } from "vitest";
import { column, readCases } from "../cases.ts";
import { type CheckProject, checkProject } from "../project-run.ts";
import { checkAndRecord } from "../record.ts";

interface Root {
  readonly name: string;
  readonly real: number;
  readonly imaginary: number;
}

interface StabilityOutputs {
  readonly manoeuvres: readonly {
    readonly name: string;
    readonly lowestLoadFactor: number;
    readonly lowestRotorShare: number | null;
    readonly energyGap: number;
  }[];
  readonly conditions: readonly {
    readonly airspeed: number;
    readonly problem: string | null;
    readonly modes: readonly Root[];
    readonly frozenModes: readonly Root[];
    readonly systems: readonly { readonly states: readonly string[] }[];
  }[];
}

const folder = new URL("./", import.meta.url);
/** Roots slower than this are measured against it [1/s]. */
const slow = 0.1;
let project: CheckProject;
beforeAll(async () => {
  project = await checkProject(new URL("project/", folder));
});

/** How far the root of the airframe that moves most has its nearest among those with the rotor's speed held, over its size. */
function largestShift(modes: readonly Root[], held: readonly Root[]): number {
  const shifts = modes
    .filter(({ name }) => name !== "rotor speed")
    .map(({ real, imaginary }) => {
      const nearest = Math.min(...held.map((other) => Math.hypot(other.real - real, other.imaginary - imaginary)));
      return nearest / Math.max(slow, Math.hypot(real, imaginary));
    });
  return Math.max(...shifts);
}

test("a gyroplane's motion has rotor speed as a state, and other modes without it", () => {
  const cases = readCases(new URL("cases.csv", folder));
  const airspeeds = cases.map((row) => column(row, "airspeed"));
  const { conditions } = project.outputsOf<StabilityOutputs>("stability", {
    airspeeds,
    modes: ["clutch-open"],
    manoeuvres: { duration: 2 },
  });
  const at = (airspeed: number) => {
    const found = conditions.find((condition) => condition.airspeed === airspeed);
    if (!found || found.problem !== null) throw new Error(`no level flight at ${airspeed} m/s: ${found?.problem ?? ""}`);
    return found;
  };
  const along = { name: "airspeed", quantity: "speed" as const, values: airspeeds };
  checkAndRecord(folder, "thomson-houston-1997", [
    {
      quantity: "rotor-speed states of the linear motion",
      error: "1",
      rows: cases.map((row) => ({
        expected: column(row, "rotor_speed_states"),
        computed: at(column(row, "airspeed")).systems.flatMap(({ states }) => states.filter((id) => id.startsWith("rotor-speed"))).length,
        bounds: [0, 0],
      })),
      tolerance: "exactly 1",
      note: "structure, no numbers in the source",
      along,
    },
    {
      quantity: "largest shift of a root with rotor speed held, over its size",
      error: "1",
      rows: cases.map((row) => {
        const { modes, frozenModes } = at(column(row, "airspeed"));
        return { expected: column(row, "shift_without"), computed: largestShift(modes, frozenModes), bounds: [0.05, 10] };
      }),
      tolerance: "at least 0.05",
      note: "that it is not 0 is the statement of the source",
      along,
    },
  ]);
});

test("a push-over unloads its rotor and costs rotor speed, the more the less load factor is left", () => {
  const flown = [0.08, 0.16, 0.24].map((pitch) => {
    const { manoeuvres } = project.outputsOf<StabilityOutputs>("stability", {
      airspeeds: [25],
      modes: ["clutch-open"],
      manoeuvres: { airspeed: 25, pitch, duration: 6 },
    });
    const pushOver = manoeuvres.find(({ name }) => name === "push-over");
    if (!pushOver) throw new Error("no push-over");
    return pushOver;
  });
  for (let k = 1; k < flown.length; k++) {
    expect(flown[k]?.lowestLoadFactor).toBeLessThan(flown[k - 1]?.lowestLoadFactor ?? 0);
    expect(flown[k]?.lowestRotorShare).toBeLessThan(flown[k - 1]?.lowestRotorShare ?? 0);
  }
  for (const { energyGap, lowestRotorShare } of flown) {
    expect(Math.abs(energyGap)).toBeLessThan(1e-3);
    expect(lowestRotorShare).toBeLessThan(1);
  }
});
