import { computed, signal } from "@preact/signals";
import type { Ear, EarState } from "../../kitchen/ear-model.ts";
import { onceUnlessFailed } from "../../kitchen/once-unless-failed.ts";

/** The recogniser weighs more than the page: nobody waits for it before the first touch. */
const notLoaded = (works: string): string => `The ear could not be loaded. Touch it to try again; ${works}.`;

/**
 * An ear that fetches itself when it is first started, and is off until then. A failed fetch can be tried again.
 * @param canType whether typed words are understood without it
 */
export function lazyEar(load: () => Promise<Ear>, canType: () => boolean): Ear {
  const inner = signal<Ear | null>(null);
  const own = signal<EarState>({ kind: "off", sentence: null, loading: null });
  const loadOnce = onceUnlessFailed(load);
  const open = async (): Promise<Ear> => (inner.value ??= await loadOnce());
  const prepare = async (): Promise<void> => {
    try {
      await (await open()).prepare();
    } catch {
      // Whoever touches the ear tries again, and is told.
    }
  };
  const start = async (): Promise<void> => {
    if (own.value.kind === "loading") return;
    try {
      own.value = { kind: "loading", sentence: null, loading: null };
      const ear = await open();
      own.value = { kind: "off", sentence: null, loading: null };
      await ear.start();
    } catch {
      const sentence = notLoaded(canType() ? "typing and touching work" : "touching works");
      own.value = { kind: "trouble", sentence, loading: null };
    }
  };
  return {
    state: computed(() => {
      const mine = own.value;
      return inner.value === null || mine.kind === "trouble" ? mine : inner.value.state.value;
    }),
    level: computed(() => inner.value?.level.value ?? 0),
    partial: computed(() => inner.value?.partial.value ?? ""),
    room: computed(() => inner.value?.room.value ?? "quiet"),
    prepare,
    start,
    listenOnce: () => inner.peek()?.listenOnce(),
    stop: () => inner.peek()?.stop(),
  };
}
