import { systemClock } from "./clock.ts";
import { ringWatch } from "./ring-watch.ts";

/** To the clock's worker. */
export type ToRingClock =
  | { readonly type: "set"; readonly id: string; readonly at: number }
  | { readonly type: "clear"; readonly id: string };

/** From the clock's worker: this one is due in about 300 ms. */
export interface FromRingClock {
  readonly type: "due";
  readonly id: string;
  /** Epoch milliseconds. */
  readonly at: number;
}

/** Deadlines that hold in a hidden page too. */
export interface RingClock {
  readonly set: (id: string, atEpochMs: number) => void;
  readonly clear: (id: string) => void;
  readonly close: () => void;
}

function startRingWorker(): Worker {
  return new Worker(new URL("../workers/ring-clock.ts", import.meta.url), { type: "module", name: "ring-clock" });
}

/**
 * A browser slows the timers of a hidden page to one look a minute, but not those of its workers.
 * @param onDue called about 300 ms before the deadline: hand `atEpochMs` on to `sound.ring`, which puts it on the
 * audio clock. A deadline already past is announced at once.
 * @param startWorker where it fails (or the worker dies) the page's own timers take over
 */
export function createRingClock(onDue: (id: string, atEpochMs: number) => void, startWorker: () => Worker = startRingWorker): RingClock {
  const set = new Map<string, number>();
  const due = (id: string, at: number): void => {
    // A ring that was moved or cleared while its announcement was under way is not this one any more.
    if (set.get(id) !== at) return;
    set.delete(id);
    onDue(id, at);
  };
  const here = ringWatch(systemClock, due);
  let worker: Worker | null = null;
  const send = (message: ToRingClock): void => { worker?.postMessage(message); };
  const takeOver = (): void => {
    if (worker === null) return;
    worker.terminate();
    worker = null;
    for (const [id, at] of set) here.set(id, at);
  };
  try {
    worker = startWorker();
    worker.onmessage = (event: MessageEvent<FromRingClock>) => { due(event.data.id, event.data.at); };
    worker.onerror = takeOver;
  } catch {
    // No workers here (an old browser, a policy): the page's own timers are late when hidden, yet they do ring.
    worker = null;
  }
  return {
    set: (id, at) => {
      set.set(id, at);
      if (worker === null) here.set(id, at);
      else send({ type: "set", id, at });
    },
    clear: (id) => {
      set.delete(id);
      if (worker === null) here.clear(id);
      else send({ type: "clear", id });
    },
    close: () => {
      set.clear();
      here.stop();
      worker?.terminate();
      worker = null;
    },
  };
}
