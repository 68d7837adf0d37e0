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
  sentence:
    "This browser cannot keep the screen awake; set the screen to stay on in the device's own settings.",
};
const refused: WakeLockState = {
  state: "refused",
  sentence:
    "The device would not keep the screen awake, perhaps because its battery is low; plug it in, or touch the screen now and then.",
};

function browserPlace(): WakeLockPlace {
  // The type says that it is always there; outside a secure page, and in older browsers, it is not.
  const wakeLock = (navigator as { readonly wakeLock?: globalThis.WakeLock }).wakeLock;
  return { wakeLock, page: document };
}

class ScreenLock implements WakeLock {
  readonly #onState: (state: WakeLockState) => void;
  readonly #place: WakeLockPlace;
  #state: WakeLockState = { state: "off" };
  #wanted = false;
  #sentinel: WakeLockSentinel | null = null;

  constructor(onState: (state: WakeLockState) => void, place: WakeLockPlace) {
    this.#onState = onState;
    this.#place = place;
  }

  hold(): Promise<WakeLockState> {
    if (!this.#wanted) this.#place.page.addEventListener("visibilitychange", this.#seen);
    this.#wanted = true;
    return this.#ask();
  }

  async release(): Promise<void> {
    this.#wanted = false;
    this.#place.page.removeEventListener("visibilitychange", this.#seen);
    const held = this.#sentinel;
    this.#sentinel = null;
    await held?.release();
    this.#change({ state: "off" });
  }

  state(): WakeLockState {
    return this.#state;
  }

  /** The browser takes the lock away from a hidden page and does not give it back by itself. */
  readonly #seen = (): void => {
    if (this.#wanted && this.#place.page.visibilityState === "visible") void this.#ask();
  };

  async #ask(): Promise<WakeLockState> {
    const { wakeLock, page } = this.#place;
    if (wakeLock === undefined) return this.#change(unsupported);
    if (page.visibilityState !== "visible") return this.#change({ state: "hidden" });
    if (this.#isHeld()) return this.#state;
    try {
      return await this.#take(await wakeLock.request("screen"));
    } catch {
      return this.#change(refused);
    }
  }

  #isHeld(): boolean {
    return this.#sentinel !== null;
  }

  async #take(held: WakeLockSentinel): Promise<WakeLockState> {
    // Two calls at once, or a release in the meantime: keep one lock or none.
    if (!this.#wanted || this.#isHeld()) {
      await held.release();
      return this.#state;
    }
    this.#sentinel = held;
    held.addEventListener("release", () => {
      this.#lost(held);
    });
    return this.#change({ state: "held" });
  }

  #lost(which: WakeLockSentinel): void {
    if (which !== this.#sentinel) return;
    this.#sentinel = null;
    this.#change({ state: this.#wanted ? "hidden" : "off" });
  }

  #change(next: WakeLockState): WakeLockState {
    const changed = next.state !== this.#state.state;
    this.#state = next;
    if (changed) this.#onState(next);
    return next;
  }
}

/** @param onState told of every change; a sentence in it is meant for the screen */
export function createWakeLock(
  onState: (state: WakeLockState) => void,
  place: WakeLockPlace = browserPlace(),
): WakeLock {
  return new ScreenLock(onState, place);
}
