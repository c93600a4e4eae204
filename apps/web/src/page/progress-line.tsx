import type { Progress } from "../model/catalogue.ts";

interface ProgressLineProps {
  readonly progress: Progress | undefined;
  readonly onStop: () => void;
}

/** Under the question while a run lasts: how far, how long still, and Stop. The style sheet shows it after 400 ms only. */
export function ProgressLine({ progress, onStop }: ProgressLineProps) {
  const share = progress && progress.total > 0 ? Math.min(1, progress.done / progress.total) : 0;
  return (
    <div className="working">
      <div
        className="working-line"
        role="progressbar"
        aria-label="Computing"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round(share * 100)}
      >
        <div style={{ width: `${share * 100}%` }} />
      </div>
      <p className="small quiet">
        {progress ? progressWords(progress) : "Starting"}
        <button type="button" onClick={onStop}>
          Stop
        </button>
      </p>
    </div>
  );
}

export function progressWords({ done, total, doing, remainingSeconds }: Progress): string {
  const counted = `${done} of ${total} ${doing}`;
  if (remainingSeconds === undefined || remainingSeconds === null) return counted;
  return `${counted}, about ${remainingSeconds < 90 ? `${Math.max(1, Math.round(remainingSeconds))} s` : `${Math.round(remainingSeconds / 60)} min`}`;
}
