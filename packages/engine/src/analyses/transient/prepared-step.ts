import type { EulerAngles, FlightEvent, RecoveryGoal } from "../../motion/index.ts";
import type { TransientInputs } from "./schema.ts";

/** What happens to a flight, as events. */
export interface PreparedStep {
  readonly words: string;
  readonly reaction: string | null;
  readonly events: readonly FlightEvent[];
  /** Attitude that is wanted over time; that of the start when absent. */
  readonly wanted?: (time: number) => EulerAngles;
  /** What it should come back to; what it was before when absent. */
  readonly goal?: RecoveryGoal;
}

/** When it happens: what stands before shows that the flight was steady [s]. */
export const stepAt = 1;
/** The step of a question when it is of this kind. */
export type StepOf<Kind extends TransientInputs["step"]["kind"]> = Extract<TransientInputs["step"], { readonly kind: Kind }>;
