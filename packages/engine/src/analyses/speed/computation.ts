import type { Trimmed } from "../../equilibrium/index.ts";
import {
  type Flown,
  type Flyer,
  glidePolar,
  type LineHooks,
  type PoweredMode,
  speedSummary,
  type VerticalAutorotationOutcome,
} from "../../performance/index.ts";
import { Cancelled, type Context } from "../contract.ts";
import { type Columns, type Lines, lineRows, speedLimitShares, summaryOutputs } from "./rows.ts";
import type { SpeedOutputs } from "./schema.ts";

/** Glides are looked for from this airspeed up [m/s]. */
const slowestGlide = 8;

/** One aircraft, loading and air at a trim level. */
export interface SpeedCraft<F extends Flown = Trimmed> {
  readonly flyer: Flyer<F>;
  /** The same with scheduled controls where the file has them, for comparison. */
  readonly onSchedule?: Flyer<F>;
  readonly columns: Columns<F>;
  readonly takeoffMass: number;
  verticalAutorotation(): VerticalAutorotationOutcome;
}

/** The answer over given speeds, ascending [m/s]; without the power-off part when it is not `complete`. */
export function speedComputation<F extends Flown>(
  craft: SpeedCraft<F>,
  speeds: readonly number[],
  context: Pick<Context<SpeedOutputs>, "progress" | "cancelled">,
  complete: boolean,
): SpeedOutputs {
  const { flyer, onSchedule } = craft;
  const total = (onSchedule && complete ? 10 : 6) * speeds.length;
  let before = 0;
  const hooks: LineHooks = {
    progress: (done) => context.progress(before + done, total, "speeds"),
    cancelled: () => {
      if (context.cancelled()) throw new Cancelled();
    },
  };
  const line = (from: Flyer<F>, mode: PoweredMode) => {
    const found = complete ? from.line(mode, speeds, hooks) : from.coarseLine(mode, speeds, hooks);
    before += 2 * speeds.length;
    return found;
  };
  const both = (from: Flyer<F>): Lines<F> => ({ "clutch-closed": line(from, "clutch-closed"), "clutch-open": line(from, "clutch-open") });
  const lines = both(flyer);
  const schedule = onSchedule && complete ? both(onSchedule) : undefined;
  const glide = glidePolar(flyer, complete ? speeds.filter((airspeed) => airspeed >= slowestGlide) : [], hooks);
  const summary = speedSummary(flyer, lines);
  const vertical = complete ? craft.verticalAutorotation() : ({ kind: "no-equilibrium", reason: "not computed yet" } as const);
  return {
    rows: lineRows(lines, craft.columns, schedule),
    summary: summaryOutputs(craft.takeoffMass, lines, summary, glide, vertical),
    glide: glide.line.map((point) => ({
      airspeed: point.airspeed,
      sinkRate: point.outcome.kind === "trimmed" ? -point.outcome.flown.climbRate : null,
      limit: point.outcome.kind === "trimmed" ? null : point.outcome.limit,
    })),
    limits: speedLimitShares(lines),
  };
}
