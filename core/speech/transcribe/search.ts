import type { Tokens, Writing } from "./transcriber.ts";
import type { Place, WordPaths } from "./word-paths.ts";

/** A sentence of the grammar that an utterance may have been. */
export type Candidate = {
  readonly words: readonly string[];
  /** Natural logarithm of the model's probability of this text given the sound; always below 0. */
  readonly score: number;
};

/** What a search came to. */
export type Found = {
  /** What the model would write if it were free: text, and the score of it. */
  readonly free: { readonly text: string; readonly score: number };
  /** Sentences of the grammar, the likeliest first; empty where none is anywhere near. */
  readonly candidates: readonly Candidate[];
  /** How likely it is that the address was said first, whatever followed: a natural logarithm. */
  readonly called: number;
};

/** How hard to search. Scores are natural logarithms. */
export type SearchSettings = {
  /** Drafts kept side by side at most. */
  readonly drafts: number;
  /** A draft so far behind the best of the others, or behind what the model would write freely, is given up. */
  readonly width: number;
  readonly widthBelowFree: number;
  /** Seconds of speech in the utterance, pauses included: a sentence too short to have lasted so long loses by it. */
  readonly speechS: number;
  /** The address alone rules out no sentence that goes on. */
  readonly address: readonly string[];
  /** Whether every sentence begins with it: then an utterance that does not is soon given up. */
  readonly isAddressed: boolean;
  /** Asked before each token: true where nobody wants the answer any more. Gives others a turn meanwhile. */
  readonly isGivenUp: () => Promise<boolean>;
  /** No sentence has more tokens. */
  readonly longest: number;
};

/**
 * Enough for most sentences, which leave no doubt; what does goes to the large network. Of 237 in the quiet, under fan
 * (10 dB) and tap (20 dB) five drafts and what follows heard 223 right, eight 221. Of 104 in the quiet, under fan (10 dB) and tap (20 and 10 dB)
 * a width of 6 found 91 and one of 12 found 92, in four fifths of the time.
 */
export const quickSearch = { drafts: 5, width: 6, widthBelowFree: 24, longest: 48 } as const;

/**
 * For a sentence that was not clear. Under a tap (10 dB) twelve drafts lost 12 of 78 sentences that the model found
 * likelier than what it was left with, sixteen 8 and thirty-two 4.
 */
export const patientSearch = { drafts: 24, width: 16, widthBelowFree: 36, longest: 48 } as const;

/** What the model would write, and nothing of the grammar. */
export const freeSearch = { drafts: 0, width: 0, widthBelowFree: 0, longest: 48 } as const;

/** A draft only loses by going on, so what lies further than this behind a whole sentence is given up. */
const rivalWithin = 4;

/** The address is written in few ways: before its end so many drafts are enough. */
const draftsCalling = 4;

/**
 * Less likely than this that the address was said first, and it was not: none of 312 utterances of it, in the quiet, a
 * room, under fan, tap and clatter (10 dB), lay below, and of 36 pieces of other talk 33.
 */
export const leastCalled = -24;

type Draft = {
  /** Its row in the last step of the model. */
  readonly row: number;
  readonly score: number;
  readonly token: number;
  readonly place: Place;
  readonly words: readonly string[];
  /** The same, joined: two drafts are soon compared. */
  readonly text: string;
};

type FreeText = { readonly row: number; readonly tokens: readonly number[]; readonly score: number };

/**
 * Finds the sentences of a grammar that an utterance may have been, and what it would be without the grammar, in one
 * pass: a beam search over tokens that only goes where some sentence goes, with one draft beside it that goes anywhere.
 * Two drafts that said the same words and stand at the same place are one, the likelier way of writing them.
 */
export async function search(
  writing: Writing,
  paths: WordPaths,
  tokens: Tokens,
  settings: SearchSettings,
): Promise<Found> {
  let free: FreeText = { row: 0, tokens: [], score: 0 };
  let isFreeDone = false;
  const first = { row: 0, score: 0, token: tokens.first, place: paths.start(), words: [], text: "" };
  let drafts: readonly Draft[] = settings.drafts === 0 ? [] : [first];
  const done = new Map<string, Candidate>();
  let called = -Infinity;
  let rows = await writing.step([0], [tokens.first]);
  for (let at = 0; at < settings.longest; at++) {
    const sums = rows.map(logSum);
    const logOf = (row: number, token: number): number =>
      (rows[row]?.[token] ?? -Infinity) - (sums[row] ?? 0);
    if (!isFreeDone) {
      const token = likeliest(rows[free.row]);
      free = { row: free.row, tokens: [...free.tokens, token], score: free.score + logOf(free.row, token) };
      isFreeDone = token === tokens.last;
    }
    for (const draft of drafts) finish(draft, paths, logOf(draft.row, tokens.last), settings.speechS, done);
    const least = Math.max(bestOf(done, settings) - rivalWithin, free.score - settings.widthBelowFree);
    const next = goneOn(drafts, paths, logOf, least);
    for (const draft of next) if (isAddress(draft, settings.address)) called = Math.max(called, draft.score);
    drafts = kept(next, settings);
    if (settings.isAddressed && Math.max(called, drafts[0]?.score ?? -Infinity) < leastCalled) break;
    if ((drafts.length === 0 && isFreeDone) || (await settings.isGivenUp())) break;
    const parents = [...(isFreeDone ? [] : [free.row]), ...drafts.map(({ row }) => row)];
    const added = [...(isFreeDone ? [] : free.tokens.slice(-1)), ...drafts.map(({ token }) => token)];
    rows = await writing.step(parents, added);
    const offset = isFreeDone ? 0 : 1;
    free = { ...free, row: 0 };
    drafts = drafts.map((draft, index) => ({ ...draft, row: index + offset }));
  }
  const candidates = [...done.values()].sort((a, b) => b.score - a.score);
  return { free: { text: textOf(free.tokens, tokens), score: free.score }, candidates, called };
}

/** Whether a draft is the address, to its last letter, and nothing more yet. */
function isAddress({ place, words }: Draft, address: readonly string[]): boolean {
  // Asked of every way to go on: most drafts are past the address.
  if (words.length >= address.length) return false;
  const text = address.join(" ");
  return place.complete.some((complete) => [...words, ...complete.words].join(" ") === text);
}

function finish(
  draft: Draft,
  paths: WordPaths,
  logEnd: number,
  speechS: number,
  done: Map<string, Candidate>,
): void {
  for (const words of paths.endings(draft.place)) {
    const whole = [...draft.words, ...words];
    const score = draft.score + logEnd - paceCost(whole, speechS);
    const before = done.get(whole.join(" "));
    if (before === undefined || before.score < score) done.set(whole.join(" "), { words: whole, score });
  }
}

/**
 * The model is quick to end a text early, whatever is still said. Of 100 sentences by twelve voices none had fewer than
 * 10.6 letters in a second, pauses apart: each letter that is missing costs.
 */
function paceCost(words: readonly string[], speechS: number): number {
  return 2 * Math.max(0, (speechS - 0.35) * 11 - words.join("").length);
}

/** Every way to go on that is not less likely than `least`: most of them are. */
function goneOn(
  drafts: readonly Draft[],
  paths: WordPaths,
  logOf: (row: number, token: number) => number,
  least: number,
): readonly Draft[] {
  const found: Draft[] = [];
  for (const draft of drafts) {
    for (const { token, to, said } of paths.movesFrom(draft.place)) {
      const score = draft.score + logOf(draft.row, token);
      if (score < least) continue;
      const words = said.length === 0 ? draft.words : [...draft.words, ...said];
      const text = said.length === 0 ? draft.text : words.join(" ");
      found.push({ row: draft.row, score, token, place: to, words, text });
    }
  }
  return found;
}

/** The best of the drafts, one for each place and words. */
function kept(
  drafts: readonly Draft[],
  { drafts: most, width, address, isAddressed }: SearchSettings,
): readonly Draft[] {
  const sorted = [...drafts].sort((a, b) => b.score - a.score);
  const least = (sorted[0]?.score ?? 0) - width;
  const chosen: Draft[] = [];
  let calling = 0;
  for (const draft of sorted) {
    if (draft.score < least || chosen.length === most) break;
    const isCalling = isAddressed && draft.words.length < address.length;
    if (isCalling && calling === draftsCalling) continue;
    const isKnown = chosen.some(({ place, text }) => place === draft.place && text === draft.text);
    if (isKnown) continue;
    chosen.push(draft);
    if (isCalling) calling++;
  }
  return chosen;
}

function bestOf(done: ReadonlyMap<string, Candidate>, { address }: SearchSettings): number {
  const alone = address.join(" ");
  return Math.max(-Infinity, ...[...done].map(([text, { score }]) => (text === alone ? -Infinity : score)));
}

function likeliest(row: Float32Array = new Float32Array()): number {
  let [best, most] = [0, -Infinity];
  for (let token = 0; token < row.length; token++) {
    const value = row[token] ?? -Infinity;
    if (value > most) [best, most] = [token, value];
  }
  return best;
}

/** ln of the sum of exp, without overflow: what makes odds into probabilities. Less than e^-16 of the most is nothing. */
function logSum(row: Float32Array): number {
  const most = row[likeliest(row)] ?? 0;
  let sum = 0;
  for (let token = 0; token < row.length; token++) {
    const behind = (row[token] ?? -Infinity) - most;
    if (behind > -16) sum += Math.exp(behind);
  }
  return most + Math.log(sum);
}

function textOf(written: readonly number[], { texts, last }: Tokens): string {
  const shown = written.filter((token) => token !== last).map((token) => texts[token] ?? "");
  return shown.join("").replaceAll("▁", " ").trim();
}
