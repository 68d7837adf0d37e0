import { listeningRate } from "../../core/speech/samples.ts";
import { ok } from "../../core/units/result.ts";
import { createSpeller } from "../../core/speech/transcribe/speller.ts";
import type { Tokens, Transcriber, Writing } from "../../core/speech/transcribe/transcriber.ts";

const letters = Array.from("abcdefghijklmnopqrstuvwxyzñ0123456789'");

/** Tokens of one character each, and a few longer ones in the order in which they were learnt, as a model has them. */
export const fakeTokens: Tokens = {
  texts: [
    "<unk>",
    "<s>",
    "</s>",
    "▁",
    ",",
    ".",
    "?",
    "-",
    ...letters,
    "K",
    "L",
    "st",
    "ep",
    "step",
    "▁step",
    "15",
  ],
  first: 1,
  last: 2,
};

/** What a model would write of an utterance, each text with a probability; together at most 1. */
export type Beliefs = Readonly<Record<string, number>>;

/** A step that was asked for: how many drafts it had. */
export type FakeWriting = Writing & { readonly rows: readonly number[] };

/** Of a token that no belief goes on with. */
const unlikely = 1e-9;

/**
 * The writing of a model that believes so: it spells a character a token, and where it was led away from all that it
 * believes every token is as likely as another.
 */
export function fakeWriting(beliefs: Beliefs): FakeWriting {
  const believed = Object.entries(beliefs).map(([text, weight]) => ({ tokens: spelt(text), weight }));
  const rows: number[] = [];
  let drafts: readonly (readonly number[])[] = [[]];
  return {
    rows,
    step: (parents, tokens) => {
      rows.push(parents.length);
      drafts = tokens.map((token, at) => [...(drafts[parents[at] ?? -1] ?? missing()), token]);
      return Promise.resolve(drafts.map((draft) => odds(draft.slice(1), believed)));
    },
  };
}

/** The natural logarithm of the probability that such a model writes exactly this. */
export function scoreOf(text: string, beliefs: Beliefs): number {
  const believed = Object.entries(beliefs).map(([each, weight]) => ({ tokens: spelt(each), weight }));
  return spelt(text).reduce((sum, token, at, all) => {
    const row = odds(all.slice(0, at), believed);
    return sum + (row[token] ?? -Infinity) - Math.log(row.reduce((total, each) => total + Math.exp(each), 0));
  }, 0);
}

function odds(
  draft: readonly number[],
  believed: readonly { readonly tokens: readonly number[]; readonly weight: number }[],
): Float32Array {
  const chances = fakeTokens.texts.map(() => unlikely);
  for (const { tokens, weight } of believed) {
    const next = tokens[draft.length];
    if (next === undefined || draft.some((token, at) => tokens[at] !== token)) continue;
    chances[next] = (chances[next] ?? 0) + weight;
  }
  return Float32Array.from(chances, Math.log);
}

const speller = createSpeller(fakeTokens);

/** A text in tokens, a space before it and the end after it, as models write. */
function spelt(text: string): readonly number[] {
  return [...(speller.spell(`▁${text.replaceAll(" ", "▁")}`) ?? missing()), fakeTokens.last];
}

function missing(): never {
  throw new Error("the search asked for a draft or a letter that there is not");
}

/** A transcriber that is told what it will believe, and counts what was asked of it. */
export type FakeTranscriber = Transcriber & {
  readonly willBelieve: (beliefs: Beliefs) => void;
  /** The same, where an utterance that is no longer than so many seconds is believed to be something else. */
  readonly willBelieveOf: (seconds: number, shorter: Beliefs, longer: Beliefs) => void;
  /** Samples of each utterance that it took in. */
  readonly takenIn: readonly number[];
};

/** Makes one; it loads at once. */
export function createFakeTranscriber(): FakeTranscriber {
  const takenIn: number[] = [];
  let beliefsOf = (_samples: number): Beliefs => ({});
  return {
    takenIn,
    willBelieve: (beliefs) => {
      beliefsOf = () => beliefs;
    },
    willBelieveOf: (seconds, shorter, longer) => {
      beliefsOf = (samples) => (samples <= seconds * listeningRate ? shorter : longer);
    },
    tokens: () => fakeTokens,
    load: () => Promise.resolve(ok(null)),
    takeIn: (utterance) => {
      takenIn.push(utterance.length);
      const believed = beliefsOf(utterance.length);
      return Promise.resolve({ write: () => fakeWriting(believed) });
    },
    warmUp: () => Promise.resolve(),
    free: () => Promise.resolve(),
  };
}
