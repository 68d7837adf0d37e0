import { chatterFrames, type Register } from "./chatter-frames-table.ts";
import { chatterWords } from "./chatter-words-table.ts";
import type { Chance } from "./seeded.ts";

/** How often one sentence may come at most. */
export const mostRepeats = 2;

/** Says the next sentence of a way of talking, a different one each time as far as there are any. */
export type Chatterer = (register: Register) => string;

/** Sentences of people who command no kitchen, without end, following from their chance. */
export function createChatterer(chance: Chance): Chatterer {
  const spoken = new Map<string, number>();
  const decks = new Map<Register, string[]>();
  return (register) => {
    for (;;) {
      const sentence = fill(nextFrame(decks, register, chance), chance);
      const times = spoken.get(sentence) ?? 0;
      if (times >= mostRepeats || saysAddress(sentence)) continue;
      spoken.set(sentence, times + 1);
      return sentence;
    }
  };
}

/** All frames of all ways of talking, unfilled. */
export function framesOf(register: Register): readonly string[] {
  return chatterFrames[register].split("\n").filter((line) => line !== "");
}

/** Whether the two words that call the kitchen follow one another, whatever stands between them. */
function saysAddress(sentence: string): boolean {
  return /\bokay\W+kitchen\b/i.test(sentence);
}

/** Frames come in a shuffled order, each once before any comes again. */
function nextFrame(decks: Map<Register, string[]>, register: Register, chance: Chance): string {
  const deck = decks.get(register) ?? [];
  decks.set(register, deck);
  if (deck.length === 0) {
    deck.push(...framesOf(register));
    for (let at = deck.length - 1; at > 0; at--) {
      const other = chance.whole(at + 1);
      [deck[at], deck[other]] = [deck[other] ?? "", deck[at] ?? ""];
    }
  }
  return deck.pop() ?? "";
}

/** One of the parts of every [a|b], a word in every {slot}, no word twice in a sentence; throws for an unknown slot. */
function fill(frame: string, chance: Chance): string {
  const used = new Set<string>();
  const chosen = frame.replaceAll(/\[([^\]]*)\]/g, (_, parts: string) => chance.pick(parts.split("|")));
  const filled = chosen.replaceAll(/\{(\w+)\}/g, (_, slot: string) => {
    const words = chatterWords.get(slot);
    if (words === undefined) throw new Error(`The frame "${frame}" has an unknown slot "${slot}".`);
    let word = chance.pick(words);
    for (let tries = 0; used.has(word) && tries < 8; tries++) word = chance.pick(words);
    used.add(word);
    return word;
  });
  return withCapital(
    filled
      .replaceAll(/\s+/g, " ")
      .replaceAll(/ ([,.?!])/g, "$1")
      .replaceAll(/\b([Aa]) (?=[aeio])/g, "$1n ")
      .trim(),
  );
}

function withCapital(sentence: string): string {
  return sentence.replace(/[a-z]/i, (letter) => letter.toUpperCase());
}
