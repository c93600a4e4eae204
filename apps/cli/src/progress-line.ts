import type { Progress } from "@wingseed/runner";
import { Presets, SingleBar } from "cli-progress";
import type { Streams } from "./streams.ts";

export interface ProgressLine {
  show(progress: Progress): void;
  close(): void;
}

/** One line on the terminal that says how far a run is; nothing where nobody looks. */
export function progressLine(streams: Streams): ProgressLine {
  if (!streams.errIsTerminal) return { show: () => {}, close: () => {} };
  let bar: SingleBar | undefined;
  function started(total: number): SingleBar {
    if (bar) return bar;
    const made = new SingleBar(
      {
        format: "{doing}  {bar}  {value} of {total}{remaining} · Ctrl-C keeps what is done",
        barsize: 20,
        clearOnComplete: true,
        hideCursor: true,
        stream: process.stderr,
        fps: 8,
        gracefulExit: false,
      },
      Presets.shades_classic,
    );
    made.start(total, 0, { doing: "", remaining: "" });
    bar = made;
    return made;
  }
  return {
    show({ done, total, doing, remainingSeconds }) {
      if (done >= total && !bar) return;
      const line = started(total);
      line.setTotal(total);
      line.update(done, { doing, remaining: remainingSeconds === null ? "" : `, about ${duration(remainingSeconds)} left` });
    },
    close: () => bar?.stop(),
  };
}

function duration(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
}
