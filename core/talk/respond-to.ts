import { carryOut, carryOutSurely } from "./carry-out.ts";
import { isDialogue } from "./intent-groups.ts";
import { correct, corrected, isCorrectable } from "./answers/correction.ts";
import { again, whatDidYouHear } from "./answers/talking.ts";
import { describe } from "./describe.ts";
import type { Intent, IntentOf } from "./intent.ts";
import type { Dialogue, Kitchen, Question, Reply } from "./model.ts";
import type { Outcome } from "./outcome.ts";
import { asks, asksLeave, told } from "./outcome.ts";
import { sayParts } from "./speech.ts";

/** What was done for an utterance: the outcome, and the intent that it was carried out as. */
type Done = { readonly outcome: Outcome; readonly as: Intent };

/**
 * The answer to an intent that needs no understanding any more: a touch, or words that were understood. Orders are
 * tried out on a copy of the log first, so what is said is what happens.
 * @param words what it stands for, as the cook would have said it
 */
export function respondTo(intent: Intent, words: string, kitchen: Kitchen): Reply {
  const { outcome, as } = answer(meant(intent, kitchen.dialogue), kitchen);
  return {
    intent: as,
    say: outcome.say,
    orders: outcome.orders,
    voice: outcome.voice,
    house: outcome.house,
    list: outcome.list,
    dialogue: dialogueAfter(words, intent, as, outcome, kitchen),
  };
}

function dialogueAfter(
  text: string,
  heard: Intent,
  as: Intent,
  outcome: Outcome,
  kitchen: Kitchen,
): Dialogue {
  const { dialogue } = kitchen;
  // Asking what was heard or said must not hide it.
  const isAboutTalk = heard.type === "WhatDidYouHear" || heard.type === "Again";
  const isDeed = outcome.orders.length > 0 && isCorrectable(as);
  return {
    question: outcome.question,
    lastSaid: outcome.say === "" || isAboutTalk ? dialogue.lastSaid : outcome.say,
    lastHeard: isAboutTalk ? dialogue.lastHeard : text.trim().slice(0, 200),
    lastUnderstood: isAboutTalk ? dialogue.lastUnderstood : describe(as),
    correctable: isDeed
      ? { intent: as, utteranceId: kitchen.utteranceId }
      : outcome.orders.length + outcome.house.length + outcome.list.length > 0
        ? null
        : dialogue.correctable,
  };
}

/** Answers to the open question first; every other intent closes it and is carried out. */
function answer(intent: Intent, kitchen: Kitchen): Done {
  const { question } = kitchen.dialogue;
  const plain = (outcome: Outcome): Done => ({ outcome, as: intent });
  if (!isDialogue(intent)) return plain(carryOut(intent, kitchen, "wanted"));
  switch (intent.type) {
    case "Yes":
      return yes(question, kitchen);
    case "No":
      return plain(no(question, kitchen));
    case "NeverMind":
      return plain(told("All right."));
    case "More":
      return plain(question?.kind === "more" ? sayParts(question.rest) : told("That was all."));
    case "Pick":
      return pick(intent, question, kitchen);
    case "Correct":
      return correction(intent, kitchen);
    case "Again":
      return plain(again(kitchen) ?? carryOut({ type: "WhatNow" }, kitchen, "wanted"));
    case "WhatDidYouHear":
      return plain({ ...whatDidYouHear(kitchen), question });
  }
}

/** "Go on" after "More?" and "use it" after a swap was offered are answers, whatever else they may mean. */
function meant(intent: Intent, { question }: Dialogue): Intent {
  if (intent.type === "GoOn" && question?.kind === "more") return { type: "More" };
  const isSwap = question?.kind === "confirm" && question.intent.type === "UseInstead";
  return intent.type === "UseInstead" && intent.use === null && isSwap ? { type: "Yes" } : intent;
}

function yes(question: Question | null, kitchen: Kitchen): Done {
  const as: Intent = { type: "Yes" };
  switch (question?.kind) {
    case "confirm":
      return { as: question.intent, outcome: carryOut(question.intent, kitchen, "given") };
    case "more":
      return { as: { type: "More" }, outcome: sayParts(question.rest) };
    case "which":
    case "missing":
      return { as, outcome: asks(question) };
    case undefined:
      return { as, outcome: told(kitchen.log.session === null ? "Yes?" : "Good. I had not asked anything.") };
  }
}

/** "No" with nothing asked, right after a deed, is about that deed. */
function no(question: Question | null, kitchen: Kitchen): Outcome {
  // A note that is not wanted tonight is kept for another time.
  if (question?.kind === "confirm" && question.intent.type === "AnswerNote")
    return carryOut({ ...question.intent, answer: "kept" }, kitchen, "given");
  if (question?.kind === "confirm") return told("All right, I leave it.");
  if (question !== null) return told("All right.");
  if (kitchen.dialogue.correctable === null) return told("All right. Nothing was asked.");
  return asksLeave({ type: "UndoThat" }, "Shall I undo that?");
}

function pick(intent: IntentOf<"Pick">, question: Question | null, kitchen: Kitchen): Done {
  const chosen = question?.kind === "which" ? question.candidates[intent.candidate] : undefined;
  if (chosen !== undefined) return { as: chosen.intent, outcome: carryOutSurely(chosen.intent, kitchen) };
  return {
    as: intent,
    outcome: question === null ? told("I had not offered anything to choose.") : asks(question),
  };
}

function correction(intent: IntentOf<"Correct">, kitchen: Kitchen): Done {
  const was = kitchen.dialogue.correctable?.intent;
  const anew = was === undefined ? null : corrected(intent, was);
  if (anew === null)
    return { as: intent, outcome: told("I am not sure what to change. Say the whole of it once more.") };
  return { as: anew, outcome: correct(kitchen, (undone) => carryOutSurely(anew, undone)) };
}
