import { computed, signal } from "@preact/signals";
import type { Ear, EarState } from "../../kitchen/ear-model.ts";

/** The recogniser weighs more than the page: nobody waits for it before the first touch. */
const notLoaded = "The ear could not be loaded. Touch it to try again; typing and touching work.";

/** An ear that fetches itself when it is first started, and is off until then. A failed fetch can be tried again. */
export function lazyEar(load: () => Promise<Ear>): Ear {
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
      own.value = { kind: "trouble", sentence: notLoaded, loading: null };
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

/** However often it is called meanwhile, there is one; after a failure the next call tries again. */
function onceUnlessFailed<T>(load: () => Promise<T>): () => Promise<T> {
  let loading: Promise<T> | null = null;
  return () => {
    loading ??= load().catch((thrown: unknown) => {
      loading = null;
      throw thrown;
    });
    return loading;
  };
}
