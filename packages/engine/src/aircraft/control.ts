import { z } from "zod";
import { type QuantityKind, quantity } from "../quantities/index.ts";

/**
 * A control as the aircraft really has it: fixed by construction, set on the ground, scheduled over airspeed, or free
 * within limits in flight. At `optimum` a scheduled control is free within its limits; a fixed or ground-set one never is.
 */
export function control(kind: QuantityKind, description: string) {
  const value = quantity(kind, { description });
  const minimum = quantity(kind, { description: "Smallest setting." });
  const maximum = quantity(kind, { description: "Largest setting." });
  return z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("fixed"), value }),
    z.strictObject({ kind: z.literal("ground-set"), value, minimum, maximum }),
    z.strictObject({
      kind: z.literal("scheduled"),
      schedule: z
        .array(
          z.strictObject({
            airspeed: quantity("speed", { description: "True airspeed of this point.", minimum: 0 }),
            value,
          }),
        )
        .min(1)
        .describe("Linear between points, held beyond the ends."),
      minimum,
      maximum,
    }),
    z.strictObject({ kind: z.literal("free"), minimum, maximum }),
  ]);
}

export type Control = z.infer<ReturnType<typeof control>>;

/** The setting that a schedule asks for at an airspeed [m/s], in the unit of the control. */
export function scheduledValue(schedule: readonly { readonly airspeed: number; readonly value: number }[], airspeed: number): number {
  const first = schedule[0];
  if (first === undefined) throw new RangeError("a schedule has at least one point");
  let below = first;
  for (const point of schedule) {
    if (point.airspeed >= airspeed) {
      const span = point.airspeed - below.airspeed;
      return span > 0 ? below.value + ((point.value - below.value) * (airspeed - below.airspeed)) / span : point.value;
    }
    below = point;
  }
  return below.value;
}

/** Where a control may go at this airspeed: one value, or a range. */
export interface ControlRange {
  readonly minimum: number;
  readonly maximum: number;
}

/** The range that trim may use: the whole range where free (or scheduled, at `optimum`), one value otherwise. */
export function controlRange(setting: Control, airspeed: number, use: "optimum" | "schedule"): ControlRange {
  switch (setting.kind) {
    case "fixed":
    case "ground-set":
      return { minimum: setting.value, maximum: setting.value };
    case "free":
      return { minimum: setting.minimum, maximum: setting.maximum };
    case "scheduled": {
      if (use === "optimum") return { minimum: setting.minimum, maximum: setting.maximum };
      const value = scheduledValue(setting.schedule, airspeed);
      return { minimum: value, maximum: value };
    }
  }
}
