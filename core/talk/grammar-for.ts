import type { Grammar, Phrase } from "../speech/grammar.ts";
import { deedsAtHand } from "./deeds.ts";
import { namesOf, occasionsIn } from "./listening.ts";
import { wantedSlots } from "./missing.ts";
import type { Kitchen } from "./model.ts";
import type { NameBook } from "./name-book.ts";
import type { Pattern } from "./pattern.ts";
import { readPattern, slotsOf, toPhrase } from "./pattern.ts";
import { phrasebook } from "./phrasebook.ts";
import type { SlotName } from "./slots.ts";
import { isValueSlot } from "./value-slots.ts";
import { valueRules } from "./value-rules.ts";

/** A line of the phrasebook; its phrase is the same at every moment at which all that it names has a name. */
type Line = { readonly pattern: Pattern; readonly slots: readonly SlotName[]; readonly whole: Phrase | null };

const lineOf = (text: string): Line => {
  const pattern = readPattern(text);
  return { pattern, slots: slotsOf(pattern), whole: toPhrase(pattern, () => true) };
};

const lines: readonly (readonly [entry: (typeof phrasebook)[number], says: readonly Line[]])[] =
  phrasebook.map((entry) => [entry, entry.says.map(lineOf)]);

const valuePhrases = [...valueRules].map(([name, pattern]) => [name, toPhrase(pattern, () => true)] as const);

const words = (text: string): Phrase => ({ kind: "words", text });

/** How the missing part of a half sentence may be said. */
export const answerPattern = (slot: SlotName): Pattern =>
  readPattern(`[for | of | to | by | at | in] [the] {${slot}}`);

/** What a bare answer may sound like: the phrasebook's own slots, the hearing of them left to their rules. */
function answersTo(kitchen: Kitchen): readonly Pattern[] {
  const { question } = kitchen.dialogue;
  return question?.kind === "missing" ? wantedSlots(question.intent).map(answerPattern) : [];
}

/**
 * All that is worth listening for at this moment, for the recogniser: the phrasebook's lines with the names of
 * this meal, numbers that agree with their units, and answers only while a question is open.
 * Root "command"; one rule for each intent and each slot that is used.
 */
export function grammarFor(kitchen: Kitchen): Grammar {
  const { session } = kitchen.log;
  const names = session === null ? namesOf(kitchen) : { ...namesOf(kitchen), deed: deedsAtHand(session) };
  const occasions = occasionsIn(kitchen);
  const hasNames = (slot: SlotName): boolean => isValueSlot(slot) || names[slot].length > 0;
  const rules = new Map<string, Phrase>();
  const phraseOf = ({ pattern, slots, whole }: Line): Phrase | null =>
    slots.every(hasNames) ? whole : toPhrase(pattern, hasNames);
  const say = (intent: string, phrases: readonly (Phrase | null)[]): void => {
    const of = phrases.flatMap((phrase) => phrase ?? []);
    if (of.length === 0) return;
    const known = rules.get(intent);
    const before = known?.kind === "choice" ? known.of : [];
    rules.set(intent, { kind: "choice", of: [...before, ...of] });
  };
  for (const [entry, says] of lines) if (occasions.has(entry.occasion)) say(entry.intent, says.map(phraseOf));
  say(
    "Answer",
    answersTo(kitchen).map((pattern) => toPhrase(pattern, hasNames)),
  );
  const command: Phrase = { kind: "choice", of: [...rules.keys()].map((name) => ({ kind: "rule", name })) };
  rules.set("command", { kind: "sequence", of: [command, { kind: "optional", of: words("please") }] });
  for (const [name, phrase] of slotRules(names)) rules.set(name, phrase);
  return { rules, root: "command" };
}

function slotRules(names: NameBook): readonly (readonly [string, Phrase])[] {
  const named = Object.entries(names).map(([name, said]: readonly [string, readonly string[]]) => {
    const phrase: Phrase = { kind: "choice", of: said.map(words) };
    return [name, phrase] as const;
  });
  return [...valuePhrases, ...named].flatMap(([name, phrase]) =>
    phrase === null ? [] : [[name, phrase] as const],
  );
}
