import { expect, it } from "vitest";
import { createWakeLock, type WakeLockState } from "../../../client/sound/wake-lock.ts";

function device(options: { readonly refuses?: true } = {}) {
  const page = Object.assign(new EventTarget(), { visibilityState: "visible" });
  const held: EventTarget[] = [];
  const request = (): Promise<WakeLockSentinel> => {
    if (options.refuses === true) return Promise.reject(new DOMException("low battery", "NotAllowedError"));
    const sentinel = new EventTarget();
    held.push(sentinel);
    return Promise.resolve(
      Object.assign(sentinel, {
        release: () => {
          sentinel.dispatchEvent(new Event("release"));
          return Promise.resolve();
        },
      }) as unknown as WakeLockSentinel,
    );
  };
  const show = (visibility: DocumentVisibilityState): void => {
    page.visibilityState = visibility;
    // As the browser does: a hidden page loses its lock.
    if (visibility === "hidden") held.at(-1)?.dispatchEvent(new Event("release"));
    page.dispatchEvent(new Event("visibilitychange"));
  };
  return { place: { wakeLock: { request }, page: page as unknown as Document }, held, show };
}

it("[S56] the screen is asked to stay awake again whenever the page comes back into view, until released", async () => {
  const states: string[] = [];
  const { place, held, show } = device();
  const lock = createWakeLock((state) => states.push(state.state), place);
  expect(await lock.hold()).toEqual({ state: "held" });
  await lock.hold();
  show("hidden");
  show("visible");
  await Promise.resolve();
  await Promise.resolve();
  await lock.release();
  show("visible");
  expect([states, held.length]).toEqual([["held", "hidden", "held", "off"], 2]);
});

it("[S56] a device that refuses, and a browser that cannot, say so in a sentence", async () => {
  const told: WakeLockState[] = [];
  const refusing = createWakeLock((state) => told.push(state), device({ refuses: true }).place);
  const unable = createWakeLock((state) => told.push(state), { ...device().place, wakeLock: undefined });
  await refusing.hold();
  await unable.hold();
  expect(told).toEqual([
    {
      state: "refused",
      sentence:
        "The device would not keep the screen awake, perhaps because its battery is low; plug it in, or touch the screen now and then.",
    },
    {
      state: "unsupported",
      sentence:
        "This browser cannot keep the screen awake; set the screen to stay on in the device's own settings.",
    },
  ]);
});

it("[S56] released while the answer is still under way, the lock is given back", async () => {
  const { place } = device();
  const lock = createWakeLock(() => undefined, place);
  const answer = lock.hold();
  await lock.release();
  await answer;
  expect(lock.state()).toEqual({ state: "off" });
});
