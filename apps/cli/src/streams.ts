/** Where a command writes, and what stands there. */
export interface Streams {
  /** Results. */
  out(text: string): void;
  /** Progress, cautions, complaints. */
  err(text: string): void;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** Columns of the terminal, at least 60. */
  readonly width: number;
  /** Whether weight and colour may be used on results. */
  readonly isColoured: boolean;
}

export function processStreams(): Streams {
  const { stdout, stderr, env } = process;
  // Whoever reads the beginning only (head, less) has what they wanted.
  stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
  stderr.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
  });
  const wanted = Number(env.COLUMNS) || stdout.columns || 100;
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    outIsTerminal: stdout.isTTY === true,
    errIsTerminal: stderr.isTTY === true,
    width: Math.max(60, wanted),
    isColoured: stdout.isTTY === true && !env.NO_COLOR && env.TERM !== "dumb",
  };
}
