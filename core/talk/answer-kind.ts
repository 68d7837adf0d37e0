import type { Answer } from "../speech/misheard/watch.ts";
import type { Dialogue, Reply } from "./model.ts";

/**
 * What an answer says about the sentence before it, for the record of what was misheard.
 * @param before the conversation as it was when the sentence came
 */
export function answerKind({ intent, orders, house, list, dialogue }: Reply, before: Dialogue): Answer {
  if (intent === null) return dialogue.question?.kind === "which" ? "asked-back" : "nothing";
  const isUndo = ({ type }: { readonly type: string }): boolean => type === "UndoLast" || type === "UndoTick";
  if ([...orders, ...house, ...list].some(isUndo)) return "taken-back";
  // "No" to "More?" or to a choice is an answer; to all else it says that this was not meant.
  const isOffer = before.question?.kind === "more" || before.question?.kind === "which";
  if (intent.type === "No" && !isOffer) return "taken-back";
  const asksLeave = dialogue.question?.kind === "confirm" || dialogue.question?.kind === "missing";
  return orders.length + house.length + list.length > 0 || asksLeave ? "deed" : "words";
}
