import { answerPattern } from "./grammar-for.ts";
import type { Intent } from "./intent.ts";
import { candidatesIn, momentOf, namesOf } from "./listening.ts";
import type { Caught, Match, SlotReader } from "./matcher.ts";
import { firstWords, matches, neededWords } from "./matcher.ts";
import { completed, wantedSlots } from "./missing.ts";
import type { Kitchen } from "./model.ts";
import type { NameBook } from "./name-book.ts";
import { ordinals } from "./names.ts";
import { readName } from "./name-index.ts";
import type { Pattern } from "./pattern.ts";
import { readPattern } from "./pattern.ts";
import type { PhraseEntry } from "./phrase-entry.ts";
import { phrasebook } from "./phrasebook.ts";
import type { Slots } from "./slots.ts";
import { noSlots } from "./slots.ts";
import { isFiller, nameWords, readings, wordsOf } from "./utterance.ts";
import type { Moment } from "./value-slots.ts";
import { isValueSlot, valueReaders } from "./value-slots.ts";

/** What one utterance was taken for; `intent` is null where nothing fits. */
export interface Understanding {
  readonly intent: Intent | null;
  /** The words that were read, in full and in lower case. */
  readonly words: readonly string[];
}

type Line = {
  readonly entry: PhraseEntry;
  readonly pattern: Pattern;
  readonly first: ReadonlySet<string> | null;
  readonly needs: readonly (readonly string[])[];
  readonly order: number;
};

const book: readonly Line[] = phrasebook.flatMap((entry, order) =>
  [...entry.says, ...entry.typed].map((text) => {
    const pattern = readPattern(text);
    return { entry, pattern, first: firstWords(pattern), needs: neededWords(pattern), order };
  }),
);

/** No line of the phrasebook, with the longest names, has as many words: this is somebody telling a story. */
const MOST_WORDS = 30;

/** The lines that a sentence beginning with a word may be; those that begin with a slot are always among them. */
const byFirst = new Map<string, readonly Line[]>();

function linesFor(first: string): readonly Line[] {
  const known = byFirst.get(first);
  if (known !== undefined) return known;
  const lines = book.filter((line) => line.first === null || line.first.has(first));
  // Only words of the phrasebook are kept, so that odd input cannot fill the memory.
  if (book.some((line) => line.first?.has(first) === true)) byFirst.set(first, lines);
  return lines;
}

/** Words that this meal does not know are taken for a name only where the sentence round them is plain. */
function isPlainEnough({ intent }: PhraseEntry, { literal, caught }: Match): boolean {
  // A timer's name is the cook's own to make up; elsewhere a figure tells as much as a word.
  if (intent === "StartTimer") return literal >= 1;
  return literal + caught.filter(({ slot }) => isValueSlot(slot)).length >= 2;
}

/**
 * What `text` wants, heard or typed. The same lines that make the recogniser's grammar are matched, with more
 * tolerance: fillers, courtesies, figures, and names that the meal does not have (so that the answer can say so).
 * Never throws; unreadable text has no intent.
 */
export function understand(text: string, kitchen: Kitchen): Understanding {
  const words = wordsOf(text);
  if (words.length > MOST_WORDS) return { intent: null, words };
  const names = namesOf(kitchen);
  const moment = momentOf(kitchen);
  for (const read of [knownReader, openReader] as const) {
    for (const reading of readings(words)) {
      const slot = read(reading, names, moment);
      const intent = answerTo(kitchen, reading, slot) ?? bestOf(kitchen, reading, slot);
      if (intent !== null) return { intent, words };
    }
  }
  return { intent: null, words };
}

/** Half a sentence before this one: does this complete it? */
function answerTo(kitchen: Kitchen, words: readonly string[], read: SlotReader): Intent | null {
  const { question } = kitchen.dialogue;
  if (question?.kind !== "missing") return null;
  for (const slot of wantedSlots(question.intent)) {
    const match = matches(answerPattern(slot), words, read).find((one) =>
      one.caught.every(({ known }) => known),
    );
    if (match !== undefined) return completed(question.intent, slotsOf(match.caught));
  }
  return null;
}

type Candidate = { readonly line: Line; readonly match: Match };

function bestOf(kitchen: Kitchen, words: readonly string[], read: SlotReader): Intent | null {
  const first = words.find((word) => !isFiller(word)) ?? "";
  let best: Candidate | null = null;
  const said = new Set(words);
  for (const line of linesFor(first)) {
    if (line.needs.some((group) => !group.some((word) => said.has(word)))) continue;
    for (const match of matches(line.pattern, words, read)) {
      const isUnknown = match.caught.some(({ known }) => !known);
      if (isUnknown && !isPlainEnough(line.entry, match)) continue;
      const candidate = { line, match };
      if (best === null || compare(candidate, best, kitchen) < 0) best = candidate;
    }
  }
  return best === null ? null : best.line.entry.make(slotsOf(best.match.caught));
}

/** Below 0 where `a` is the better reading: what fits the moment, then the most literal, then the phrasebook's order. */
function compare(a: Candidate, b: Candidate, kitchen: Kitchen): number {
  return (
    unknownWords(a) - unknownWords(b) ||
    fit(b, kitchen) - fit(a, kitchen) ||
    b.match.literal - a.match.literal ||
    a.match.caught.length - b.match.caught.length ||
    a.line.order - b.line.order
  );
}

const unknownWords = ({ match }: Candidate): number =>
  match.caught.reduce((sum, one) => sum + (one.known ? 0 : one.words), 0);

/** An answer outranks everything while its question is open; otherwise it is the last thing thought of. */
function fit({ line }: Candidate, kitchen: Kitchen): number {
  const { question, correctable } = kitchen.dialogue;
  if (line.entry.topic !== "answers") return 0;
  if (line.entry.intent === "Correct") return correctable === null ? 0 : 1;
  if (line.entry.intent === "Pick") return candidatesIn(kitchen).length > 0 ? 1 : -1;
  return question === null ? -1 : 1;
}

function slotsOf(caught: readonly Caught[]): Slots {
  return Object.assign({}, noSlots, Object.fromEntries(caught.map(({ slot, value }) => [slot, value])));
}

type ReaderOf = (words: readonly string[], names: NameBook, moment: Moment) => SlotReader;

/** Reads figures, and names that the kitchen has. What was read at a word is kept: many lines ask for the same. */
const knownReader: ReaderOf = (words, names, moment) => {
  const kept = new Map<string, ReturnType<SlotReader>>();
  return (slot, from) => {
    const key = `${slot} ${from}`;
    const known = kept.get(key);
    if (known !== undefined) return known;
    const read = isValueSlot(slot) ? readValue(slot) : readNamed(slot);
    kept.set(key, read);
    return read;

    function readValue(valueSlot: keyof typeof valueReaders): ReturnType<SlotReader> {
      const one = valueReaders[valueSlot](words, from, moment);
      return one === null
        ? []
        : [{ slot, value: one.value, words: one.next - from, known: true, next: one.next }];
    }
    function readNamed(nameSlot: keyof NameBook): ReturnType<SlotReader> {
      return readName(words, from, names[nameSlot]).map(({ value, next }) => ({
        slot,
        value: nameSlot === "pick" ? pickOf(value, names) : value,
        words: next - from,
        known: true,
        next,
      }));
    }
  };
};

/** Which candidate a name or an ordinal stands for; the names on offer come first in the book, the ordinals after. */
function pickOf(said: string, names: NameBook): number {
  const count = names.pick.length - ordinals.length - 1;
  if (said === "last") return Math.max(0, count - 1);
  const byOrder = ordinals.findIndex((ordinal) => ordinal === said);
  return byOrder >= 0 ? byOrder : names.pick.indexOf(said);
}

/** As `knownReader`, and any few words for a name as well. */
const openReader: ReaderOf = (words, names, moment) => {
  const known = knownReader(words, names, moment);
  return (slot, from) => {
    const read = known(slot, from);
    if (isValueSlot(slot) || slot === "deed" || slot === "pick" || slot === "helping" || slot === "tool")
      return read;
    const most = slot === "note" ? MOST_WORDS : 5;
    const unknown = Array.from({ length: Math.min(most, words.length - from) }, (_, count) => {
      const said = words.slice(from, from + count + 1);
      return {
        slot,
        // A note is no name: it keeps its articles.
        value: slot === "note" ? said.join(" ") : nameWords(said.join(" ")).join(" "),
        words: count + 1,
        known: false,
        next: from + count + 1,
      };
    });
    return [...read, ...unknown.filter(({ value }) => value !== "")];
  };
};
