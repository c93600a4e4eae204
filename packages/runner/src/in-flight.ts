import type { WorkerMessage, WorkerReply } from "./worker-protocol.ts";

type Start = (onMessage: (message: WorkerMessage) => void, signal: AbortSignal) => Promise<WorkerReply>;

interface Flight {
  readonly listeners: Set<(message: WorkerMessage) => void>;
  readonly stop: AbortController;
  readonly reply: Promise<WorkerReply>;
}

/** Lets equal questions asked at the same time share one run; it is stopped only when the last asker has gone. */
export class InFlight {
  readonly #flights = new Map<string, Flight>();

  async join(key: string, onMessage: (message: WorkerMessage) => void, signal: AbortSignal, start: Start): Promise<WorkerReply> {
    if (signal.aborted) return { kind: "cancelled" };
    const flight = this.#flights.get(key) ?? this.#begin(key, start);
    flight.listeners.add(onMessage);
    let leave = () => {};
    const left = new Promise<WorkerReply>((resolve) => {
      leave = () => {
        flight.listeners.delete(onMessage);
        if (flight.listeners.size > 0) return resolve({ kind: "cancelled" });
        // Nobody may join a run that is being stopped.
        if (this.#flights.get(key) === flight) this.#flights.delete(key);
        flight.stop.abort();
      };
    });
    signal.addEventListener("abort", leave, { once: true });
    try {
      return await Promise.race([flight.reply, left]);
    } finally {
      signal.removeEventListener("abort", leave);
      flight.listeners.delete(onMessage);
    }
  }

  #begin(key: string, start: Start): Flight {
    const listeners = new Set<(message: WorkerMessage) => void>();
    const stop = new AbortController();
    const reply = start((message) => {
      for (const listener of listeners) listener(message);
    }, stop.signal).finally(() => {
      if (this.#flights.get(key)?.stop === stop) this.#flights.delete(key);
    });
    const flight: Flight = { listeners, stop, reply };
    this.#flights.set(key, flight);
    return flight;
  }
}
