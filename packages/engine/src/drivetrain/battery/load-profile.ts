/** A load held over a stretch of time. */
export interface LoadStage {
  /** [s] */
  readonly duration: number;
  readonly kind: "power" | "current";
  /** [W] or [A] */
  readonly value: number;
}

/** Stages one after another, the whole so many times. */
export interface LoadProfile {
  readonly stages: readonly LoadStage[];
  readonly repeats: number;
}
