import { computed } from "@preact/signals";
import type { Ear } from "./ear-model.ts";

/** A sentence of the cook's is over by then; what goes on is a radio that sounds like one. */
const longestWaitMs = 4_000;

/**
 * Settles once the cook is not in the middle of a sentence that could be for us: the caller does not talk over it.
 * What the room says to itself comes to no words, and is not waited for.
 */
export async function cookHasSpoken({ state, partial }: Pick<Ear, "state" | "partial">): Promise<void> {
  const isSpeaking = computed(() => state.value.kind === "hearing" && partial.value !== "");
  if (!isSpeaking.peek()) return;
  await new Promise<void>((resolve) => {
    const end = (): void => {
      clearTimeout(limit);
      stop();
      resolve();
    };
    const limit = setTimeout(end, longestWaitMs);
    const stop = isSpeaking.subscribe((is) => {
      if (!is) queueMicrotask(end);
    });
  });
}
