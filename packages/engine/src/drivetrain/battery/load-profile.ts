/** A load held over a stretch of time. */
export interface LoadStage {
  /** [s] */
  readonly duration: number;
  readonly kind: "power" | "current";
  /** [W] or [A] */
  readonly value: number;
}

/** Stages one after another, the whole so many times; `Infinity` repeats until the pack can no more. */
export interface LoadProfile {
  readonly stages: readonly LoadStage[];
  readonly repeats: number;
}

/** Stage by stage in order, with the time each begins [s]. */
export function* stagesOf(profile: LoadProfile): Generator<LoadStage & { readonly begin: number }> {
  let begin = 0;
  for (let repeat = 0; repeat < profile.repeats; repeat++) {
    for (const stage of profile.stages) {
      yield { ...stage, begin };
      begin += stage.duration;
    }
  }
}

/** Time of the whole profile [s]. */
export function profileDuration(profile: LoadProfile): number {
  return profile.repeats * profile.stages.reduce((sum, stage) => sum + stage.duration, 0);
}
