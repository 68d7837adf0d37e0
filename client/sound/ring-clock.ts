import { systemClock } from "./clock.ts";
import { ringWatch, type RingWatch } from "./ring-watch.ts";

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
  return new Worker(new URL("../workers/ring-clock.ts", import.meta.url), {
    type: "module",
    name: "ring-clock",
  });
}

class WorkerClock implements RingClock {
  readonly #set = new Map<string, number>();
  readonly #onDue: (id: string, atEpochMs: number) => void;
  readonly #here: RingWatch;
  #worker: Worker | null = null;

  constructor(onDue: (id: string, atEpochMs: number) => void, startWorker: () => Worker) {
    this.#onDue = onDue;
    this.#here = ringWatch(systemClock, (id, at) => {
      this.#due(id, at);
    });
    try {
      const worker = startWorker();
      worker.onmessage = (event: MessageEvent<FromRingClock>) => {
        this.#due(event.data.id, event.data.at);
      };
      worker.onerror = () => {
        this.#takeOver();
      };
      this.#worker = worker;
    } catch {
      // No workers here (an old browser, a policy): the page's own timers are late when hidden, yet they do ring.
      this.#worker = null;
    }
  }

  set(id: string, at: number): void {
    this.#set.set(id, at);
    if (this.#worker === null) this.#here.set(id, at);
    else this.#worker.postMessage({ type: "set", id, at } satisfies ToRingClock);
  }

  clear(id: string): void {
    this.#set.delete(id);
    if (this.#worker === null) this.#here.clear(id);
    else this.#worker.postMessage({ type: "clear", id } satisfies ToRingClock);
  }

  close(): void {
    this.#set.clear();
    this.#here.stop();
    this.#worker?.terminate();
    this.#worker = null;
  }

  #due(id: string, at: number): void {
    // A ring that was moved or cleared while its announcement was under way is not this one any more.
    if (this.#set.get(id) !== at) return;
    this.#set.delete(id);
    this.#onDue(id, at);
  }

  #takeOver(): void {
    if (this.#worker === null) return;
    this.#worker.terminate();
    this.#worker = null;
    for (const [id, at] of this.#set) this.#here.set(id, at);
  }
}

/**
 * A browser slows the timers of a hidden page to one look a minute, but not those of its workers.
 * @param onDue called about 300 ms before the deadline: hand `atEpochMs` on to `sound.ring`, which puts it on the
 * audio clock. A deadline already past is announced at once.
 * @param startWorker where it fails (or the worker dies) the page's own timers take over
 */
export function createRingClock(
  onDue: (id: string, atEpochMs: number) => void,
  startWorker: () => Worker = startRingWorker,
): RingClock {
  return new WorkerClock(onDue, startWorker);
}
