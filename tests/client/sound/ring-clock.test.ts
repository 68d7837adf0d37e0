import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRingClock, type ToRingClock } from "../../../client/sound/ring-clock.ts";
import { ringWatch } from "../../../client/sound/ring-watch.ts";
import { handClock } from "./fakes.ts";

const start = 1_000_000;

function watched() {
  const clock = handClock(start);
  const due: string[] = [];
  const watch = ringWatch(clock, (id, at) => due.push(`${id} ${at - start} at ${clock.now() - start}`));
  return { clock, due, watch };
}

describe("the watch over deadlines", () => {
  it("[S52] a ring is announced once, 300 ms early", async () => {
    const { clock, due, watch } = watched();
    watch.set("soup", start + 60_000);
    await clock.turn(59_699);
    expect(due).toEqual([]);
    await clock.turn(100_000);
    expect(due).toEqual(["soup 60000 at 59700"]);
  });

  it("[S52] a deadline may be moved or cleared, and one already past is announced at once", async () => {
    const { clock, due, watch } = watched();
    watch.set("soup", start + 5_000);
    watch.set("soup", start + 9_000);
    watch.set("rice", start + 5_000);
    watch.clear("rice");
    watch.set("old", start - 40_000);
    watch.set("never", Number.NaN);
    expect(due).toEqual(["old -40000 at 0"]);
    await clock.turn(20_000);
    expect(due).toEqual(["old -40000 at 0", "soup 9000 at 8700"]);
  });

  it("[S52] the clock is looked at every 15 seconds, so that a machine that slept rings soon after it wakes", async () => {
    const naps: number[] = [];
    const clock = handClock(start);
    const watch = ringWatch(
      {
        now: clock.now,
        after: (ms, then) => {
          naps.push(ms);
          return clock.after(ms, then);
        },
      },
      () => undefined,
    );
    watch.set("roast", start + 900 * 3_600_000);
    await clock.turn(60_000);
    expect([naps.length, Math.max(...naps)]).toEqual([5, 15_000]);
    watch.stop();
  });

  it("[S52] any set of deadlines is announced once each, in order, never late and never over 300 ms early", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.integer({ min: 301, max: 120_000 }), { maxLength: 12 }),
        async (times) => {
          const { clock, due, watch } = watched();
          for (const time of times) watch.set(`t${time}`, start + time);
          await clock.turn(130_000);
          expect(due).toEqual(
            [...times].sort((a, b) => a - b).map((time) => `t${time} ${time} at ${time - 300}`),
          );
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe("the clock in its worker", () => {
  function fakeWorker() {
    const posted: ToRingClock[] = [];
    const worker = {
      postMessage: (message: ToRingClock) => posted.push(message),
      terminate: () => posted.push({ type: "clear", id: "(terminated)" }),
      onmessage: null,
      onerror: null,
    };
    return { posted, worker: worker as unknown as Worker };
  }
  const tell = (worker: Worker, id: string, at: number): void => {
    worker.onmessage?.({ data: { type: "due", id, at } } as MessageEvent);
  };

  it("[S53] an announcement for a deadline that was moved or cleared meanwhile is dropped", () => {
    const { worker, posted } = fakeWorker();
    const due: string[] = [];
    const clock = createRingClock(
      (id, at) => due.push(`${id} ${at}`),
      () => worker,
    );
    clock.set("soup", 100);
    clock.set("soup", 200);
    tell(worker, "soup", 100);
    clock.set("rice", 300);
    clock.clear("rice");
    tell(worker, "rice", 300);
    tell(worker, "soup", 200);
    tell(worker, "soup", 200);
    clock.close();
    expect(due).toEqual(["soup 200"]);
    expect(posted.map((message) => message.type).join()).toBe("set,set,set,clear,clear");
  });

  it("[S53] without a worker, or when it dies, the page's own timers take over with nothing lost", async () => {
    const { worker } = fakeWorker();
    for (const startWorker of [
      () => {
        throw new Error("no workers here");
      },
      () => worker,
    ]) {
      await new Promise<void>((resolve) => {
        const clock = createRingClock((id) => {
          expect(id).toBe("soup");
          clock.close();
          resolve();
        }, startWorker);
        clock.set("soup", Date.now() + 320);
        worker.onerror?.({} as ErrorEvent);
      });
    }
  });
});
