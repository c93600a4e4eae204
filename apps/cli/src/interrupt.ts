/** Turns the first Ctrl-C into a polite stop and the second into an end. */
export function interruptible<Value>(work: (signal: AbortSignal) => Promise<Value>): Promise<Value> {
  const stop = new AbortController();
  const onInterrupt = () => {
    if (stop.signal.aborted) process.exit(130);
    stop.abort();
  };
  process.on("SIGINT", onInterrupt);
  process.on("SIGTERM", onInterrupt);
  return work(stop.signal).finally(() => {
    process.off("SIGINT", onInterrupt);
    process.off("SIGTERM", onInterrupt);
  });
}
