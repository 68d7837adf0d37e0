import type { Order } from "../../cook/orders.ts";
import { spokenDuration } from "../../units/duration.ts";
import { minutes } from "../../units/quantity.ts";
import { listed } from "../../cook/say-call.ts";
import type { IntentOf } from "../intent.ts";
import type { Kitchen, VoiceOrder } from "../model.ts";
import type { Outcome } from "../outcome.ts";
import { after, asksFor, told } from "../outcome.ts";
import { breathWords, countWords, sayParts } from "../speech.ts";
import { suggestions } from "../suggestions.ts";
import { topics } from "../topics.ts";
import { isRinging } from "./timer-names.ts";

const quote = (text: string): string => `"${text}"`;

/** Longer than this and the caller would miss the evening. */
const LONGEST_QUIET = 240;

/** Orders to the voice itself; they never reach the meal log. */
export function voiceOrder(
  intent: IntentOf<"Louder" | "Softer" | "Slower" | "Faster" | "SpeakAgain">,
): Outcome {
  const answers: Readonly<Record<typeof intent.type, string>> = {
    Louder: "Louder now.",
    Softer: "Softer now.",
    Slower: "I will take it slower.",
    Faster: "A little faster, then.",
    SpeakAgain: "I am with you again.",
  };
  return { ...told(answers[intent.type]), voice: [{ type: intent.type }] };
}

/** Silence for a while; rings and what burns are still called. */
export function quietFor(intent: IntentOf<"QuietFor">): Outcome {
  const { minutes: asked } = intent;
  if (asked === null) return asksFor(intent, "Quiet for how long?");
  if (asked <= 0) return told("Quiet needs a length, like ten minutes.");
  if (asked > LONGEST_QUIET) return told("Four hours of quiet at most; you would miss dinner.");
  const voice: readonly VoiceOrder[] = [{ type: "QuietFor", minutes: asked }];
  return { ...told(`Quiet for ${spokenDuration(minutes(asked))}. Timers still ring.`), voice };
}

/** "Stop": the voice stops, and a ring that goes on is answered. */
export function stopTalking(kitchen: Kitchen): Outcome {
  const timers = [...(kitchen.log.session?.timers.values() ?? [])];
  const orders = timers
    .filter((timer) => isRinging(timer, kitchen))
    .map((timer): Order => ({ type: "AnswerRing", timer: timer.id }));
  const tried = after(kitchen, orders);
  return {
    say: "",
    orders: tried.ok ? orders : [],
    house: [],
    list: [],
    voice: [{ type: "StopTalking" }],
    question: null,
  };
}

/** What was said last, once more. */
export const again = ({ dialogue }: Kitchen): Outcome | null =>
  dialogue.lastSaid === null ? null : { ...told(dialogue.lastSaid), question: dialogue.question };

/** What was heard last, and what it was taken for. */
export function whatDidYouHear({ dialogue }: Kitchen): Outcome {
  const { lastHeard, lastUnderstood } = dialogue;
  if (lastHeard === null) return told("Nothing yet.");
  const words = lastHeard.split(/\s+/);
  const heard = words.length > 14 ? `${words.slice(0, 14).join(" ")} …` : words.join(" ");
  return told(
    lastUnderstood === null ? `I heard ${quote(heard)} and made nothing of it.` : `I heard ${quote(heard)}.`,
  );
}

/** What can be said: what fits the moment, or one chapter in parts. */
export function whatCanISay(examples: readonly string[] | null, kitchen: Kitchen): Outcome {
  if (examples !== null) return sayParts(chapters(examples));
  const now = suggestions(kitchen).slice(0, 2).map(quote).join(" or ");
  return told(`Say ${now}. Or ask "what can I say" about ${listed(topics.map(({ name }) => name))}.`);
}

/** Examples packed into breaths. */
function chapters(examples: readonly string[]): readonly string[] {
  const parts: string[][] = [[]];
  for (const example of examples) {
    const last = parts.at(-1) ?? [];
    if (last.length > 0 && countWords(`Say ${[...last, example].join(", ")} or more?`) > breathWords)
      parts.push([example]);
    else last.push(example);
  }
  return parts.map(
    (part) =>
      `Say ${part.length < 2 ? quote(part[0] ?? "") : `${part.slice(0, -1).map(quote).join(", ")} or ${quote(part.at(-1) ?? "")}`}.`,
  );
}
