/** Whether the screen is kept awake, and why not. */
export type WakeLockState =
  | { readonly state: "off" | "held" | "hidden" }
  | { readonly state: "unsupported" | "refused"; readonly sentence: string };

/** Keeps the screen awake while somebody cooks. */
export interface WakeLock {
  /** Asks now, and again whenever the page comes back into view, until `release`. */
  readonly hold: () => Promise<WakeLockState>;
  readonly release: () => Promise<void>;
  readonly state: () => WakeLockState;
}

/** What of the browser is needed; handed in, so that a test plays the browser. */
export interface WakeLockPlace {
  readonly wakeLock: Pick<globalThis.WakeLock, "request"> | undefined;
  readonly page: Pick<Document, "visibilityState" | "addEventListener" | "removeEventListener">;
}

const unsupported: WakeLockState = {
  state: "unsupported",
  sentence: "This browser cannot keep the screen awake; set the screen to stay on in the device's own settings.",
};
const refused: WakeLockState = {
  state: "refused",
  sentence: "The device would not keep the screen awake, perhaps because its battery is low; plug it in, or touch the screen now and then.",
};

function browserPlace(): WakeLockPlace {
  // The type says that it is always there; outside a secure page, and in older browsers, it is not.
  const wakeLock = (navigator as { readonly wakeLock?: globalThis.WakeLock }).wakeLock;
  return { wakeLock, page: document };
}

/** @param onState told of every change; a sentence in it is meant for the screen */
export function createWakeLock(onState: (state: WakeLockState) => void, place: WakeLockPlace = browserPlace()): WakeLock {
  const { page, wakeLock } = place;
  let state: WakeLockState = { state: "off" };
  let wanted = false;
  let sentinel: WakeLockSentinel | null = null;
  const change = (next: WakeLockState): WakeLockState => {
    const changed = next.state !== state.state;
    state = next;
    if (changed) onState(next);
    return next;
  };
  const lost = (which: WakeLockSentinel): void => {
    if (which !== sentinel) return;
    sentinel = null;
    change({ state: wanted ? "hidden" : "off" });
  };
  const ask = async (): Promise<WakeLockState> => {
    if (wakeLock === undefined) return change(unsupported);
    if (page.visibilityState !== "visible") return change({ state: "hidden" });
    if (sentinel !== null) return state;
    try {
      const held = await wakeLock.request("screen");
      // Two calls at once, or a release in the meantime: keep one lock or none.
      if (!wanted || sentinel !== null) { await held.release(); return state; }
      sentinel = held;
      held.addEventListener("release", () => { lost(held); });
      return change({ state: "held" });
    } catch {
      return change(refused);
    }
  };
  // The browser takes the lock away from a hidden page and does not give it back by itself.
  const seen = (): void => { if (wanted && page.visibilityState === "visible") void ask(); };
  return {
    hold: () => {
      if (!wanted) page.addEventListener("visibilitychange", seen);
      wanted = true;
      return ask();
    },
    release: async () => {
      wanted = false;
      page.removeEventListener("visibilitychange", seen);
      const held = sentinel;
      sentinel = null;
      await held?.release();
      change({ state: "off" });
    },
    state: () => state,
  };
}
