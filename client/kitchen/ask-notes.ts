import { effect, untracked } from "@preact/signals";
import type { Signal } from "@preact/signals";
import type { Dialogue, Reply } from "../../core/talk/model.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { between, minutes } from "../../core/units/quantity.ts";
import type { Clock } from "./clock.ts";
import type { MealStore } from "./meal-store.ts";

/** A page that is opened later in the evening does not ask unasked: "what did I want to change" still does. */
export const beginning = minutes(10);

/**
 * Asks, as a meal begins, for the first note of the evenings before that waits for an answer; the answer asks for the
 * next one. A question about a note that was answered elsewhere is put away.
 * @param ask what the caller asks of the notes that are open
 * @param remark says it after all else
 * @returns stops it
 */
export function askOpenNotes(
  clock: Clock,
  store: MealStore,
  dialogue: Signal<Dialogue>,
  ask: () => Pick<Reply, "say"> & Pick<Dialogue, "question">,
  remark: (sentence: string) => void,
): () => void {
  let asked: Instant | null = null;
  return effect(() => {
    const session = store.session.value;
    const { question } = dialogue.value;
    if (session === null) return;
    const key =
      question?.kind === "confirm" && question.intent.type === "AnswerNote" ? question.intent.key : null;
    const isOpen = session.offered.some((one) => one.state === "open" && one.key === key);
    if (key !== null && !isOpen) dialogue.value = { ...dialogue.value, question: null };
    if (question !== null || session.phase.state !== "cooking" || asked === session.begunAt) return;
    asked = session.begunAt;
    if (between(session.begunAt, untracked(clock.read)) > beginning) return;
    if (session.offered.every(({ state }) => state !== "open")) return;
    const { say, question: about } = untracked(ask);
    dialogue.value = { ...dialogue.value, question: about, lastSaid: say };
    remark(say);
  });
}
