import { effect, untracked } from "@preact/signals";
import type { Signal } from "@preact/signals";
import type { Dialogue, Question, Reply } from "../../core/talk/model.ts";
import { between } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { beginning } from "./ask-notes.ts";
import type { Clock } from "./clock.ts";
import type { MealStore } from "./meal-store.ts";
import type { Rooms } from "./rooms.ts";

/** When it was asked last, and how much was swapped already. */
interface Asked {
  readonly meal: Instant;
  readonly swaps: number;
  readonly question: Question | null;
}

/**
 * Asks, as a meal begins, whether something else is to be taken for what a diet does not allow; a yes asks for the next
 * such thing, anything else does not. A question whose answer was given elsewhere is put away.
 * @param ask what the caller asks now; its question is null where there is nothing to ask
 * @param remark says it after all else
 * @returns stops it
 */
export function askStandIns(
  clock: Clock,
  store: MealStore,
  foods: Rooms["foods"],
  dialogue: Signal<Dialogue>,
  ask: () => Pick<Reply, "say"> & Pick<Dialogue, "question">,
  remark: (sentence: string) => void,
): () => void {
  let asked: Asked | null = null;
  return effect(() => {
    const session = store.session.value;
    const { question } = dialogue.value;
    if (session === null || foods.value === null) return;
    const { begunAt: meal, phase } = session;
    const swaps = session.swaps.length;
    const isAnswered = asked?.meal !== meal || swaps > asked.swaps;
    if (isAnswered && question !== null && question === asked?.question)
      dialogue.value = { ...dialogue.value, question: null };
    if (!isAnswered || question !== null || phase.state !== "cooking") return;
    asked = { meal, swaps, question: null };
    if (between(meal, untracked(clock.read)) > beginning) return;
    const { say, question: about } = untracked(ask);
    if (about === null) return;
    asked = { meal, swaps, question: about };
    dialogue.value = { ...dialogue.value, question: about, lastSaid: say };
    remark(say);
  });
}
