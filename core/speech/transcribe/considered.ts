import { toAutomaton } from "../automaton.ts";
import { type Expectation, isAddressed } from "../expectation.ts";
import type { SecondOpinion } from "../second-opinion.ts";
import type { Verdict } from "../verdict.ts";
import { grammarOfSentences } from "./grammar-of-sentences.ts";
import { calledLimit, type Opinion, opinionOf, wordsOf } from "./opinion.ts";
import { essence } from "./same-words.ts";
import { type Candidate, patientSearch, quickSearch, search, type SearchSettings } from "./search.ts";
import type { Speller } from "./speller.ts";
import { spokenSeconds } from "./spoken-seconds.ts";
import type { TakenIn, Transcriber } from "./transcriber.ts";
import { WordPaths } from "./word-paths.ts";
import { isNumberWord } from "./written-forms.ts";

/** All that an utterance is considered with. */
export type Considering = {
  readonly transcriber: Transcriber;
  readonly second: SecondOpinion;
  readonly speller: Speller;
  readonly paths: WordPaths;
  readonly expected: Expectation;
  /** Asked now and then: true where nobody wants the answer any more. */
  readonly isGivenUp: () => Promise<boolean>;
};

/** What an utterance came to. */
export type Considered = {
  readonly verdict: Verdict;
  /** As far as it is known, the words that were said, the address before them. */
  readonly words: readonly string[];
  /** Whether they are likely to be all: in noise the beginning of a sentence may pass for a short one. */
  readonly isSettled: boolean;
  /** Whether the cook may have called: else it was somebody else's talk. */
  readonly isCall: boolean;
};

/**
 * What fits as well as this needs no second look, and where it is clear no second ear. Of 32 sentences that were torn
 * between several as good as this none came to another answer by a second look.
 */
const sureFit = 6;

/** A text as likely as this is the whole of what was said; under a fan the beginning of one came to -7. */
const settledScore = -5;

/** What the second ear alone believes must not be further than this from what the first would write. */
const rescueFit = 18;

/** Considers a whole utterance: mono, 16 kHz. */
export async function considered(utterance: Float32Array, what: Considering): Promise<Considered> {
  const { transcriber, paths, expected, isGivenUp } = what;
  const sound = await transcriber.takeIn(utterance);
  const isAddressed = expected.what.mode === "addressed";
  const known = { speechS: spokenSeconds(utterance), address: expected.address, isAddressed, isGivenUp };
  const look = (settings: Pick<SearchSettings, keyof typeof quickSearch>) =>
    search(sound.write(), paths, transcriber.tokens(), { ...settings, ...known });
  const quick = await look(quickSearch);
  const { text } = quick.free;
  const isCalled = quick.called >= calledLimit;
  const isCall = !isAddressed || isCalled;
  const first = opinionOf(quick, expected);
  // A search that was cut off says nothing of who spoke.
  if (await isGivenUp()) return { ...nothing, isCall: true };
  if (first.kind === "other" && !isCall) return { ...nothing, isCall };
  const isEnough = first.kind !== "other" && first.fit <= sureFit;
  const opinion = isEnough ? first : opinionOf(await look(patientSearch), expected);
  const mayAsk = isCalled || (opinion.kind === "other" && isAddressed);
  const heard = { isCall, words: wordsOf(text, expected), isSettled: true };
  const askSecond = () => (mayAsk ? otherReading(utterance, sound, known, what) : Promise.resolve(null));
  const among = (sentences: readonly (readonly string[])[]) =>
    what.second.among(sentences, utterance, expected);
  return { ...heard, ...(await settled(opinion, expected, { askSecond, among })) };
}

/** What the second ear can be asked: what it hears in all, or among a few. */
type Questions = {
  readonly askSecond: () => Promise<readonly string[] | null>;
  readonly among: (sentences: readonly (readonly string[])[]) => Promise<readonly string[] | null>;
};

async function settled(
  opinion: Opinion,
  expected: Expectation,
  { askSecond, among }: Questions,
): Promise<Pick<Considered, "verdict"> & Partial<Considered>> {
  switch (opinion.kind) {
    case "clear": {
      const { words, fit } = opinion;
      const other = fit <= sureFit ? null : await askSecond();
      const rivals = other === null || essence(other) === essence(words) ? [] : [other];
      const isSettled = opinion.score >= settledScore;
      return { words, isSettled, verdict: verdictFor(words, fit, rivals, expected) };
    }
    case "torn": {
      const [best, ...others] = opinion.between;
      const inDoubt = others.filter((other) => isNumberInDoubt(best, other));
      const canSettle = inDoubt.length < others.length;
      const sounded = canSettle ? await among(opinion.between.map(({ words }) => words)) : null;
      const isAgreed = sounded !== null && essence(sounded) === essence(best.words);
      const rivals = isAgreed ? inDoubt : others;
      return {
        verdict: verdictFor(
          best.words,
          opinion.fit,
          rivals.map(({ words }) => words),
          expected,
        ),
      };
    }
    case "other": {
      const words = await askSecond();
      if (words === null) return { verdict: doubtful };
      return { words, verdict: verdictFor(words, rescueFit, [], expected) };
    }
  }
}

/**
 * "Fifteen" and "fifty" are taken for one another by both ears alike, so one does not settle it for the other: the two
 * numbers of 39 sentences in the quiet that both heard wrong led by 2.1 and 2.2.
 */
const numberDoubt = 2.5;

function isNumberInDoubt(best: Candidate, other: Candidate): boolean {
  const around = ({ words }: Candidate): string => words.filter((word) => !isNumberWord(word)).join(" ");
  const differ = essence(best.words) !== essence(other.words);
  return differ && around(best) === around(other) && best.score - other.score < numberDoubt;
}

/** What the second ear hears in the whole grammar, where the first finds it at least possible. */
async function otherReading(
  utterance: Float32Array,
  sound: TakenIn,
  known: Pick<SearchSettings, "speechS" | "address" | "isAddressed" | "isGivenUp">,
  { transcriber, second, speller, expected }: Considering,
): Promise<readonly string[] | null> {
  const words = await second.ofAll(utterance, expected);
  if (words === null) return null;
  const grammar = grammarOfSentences([words]);
  const automaton = toAutomaton({ grammar, address: null, mode: "open", stopSentences: [] });
  if (!automaton.ok) return null;
  const paths = new WordPaths(automaton.value, speller);
  const { free, candidates } = await search(sound.write(), paths, transcriber.tokens(), {
    ...patientSearch,
    ...known,
    isAddressed: false,
  });
  const [same] = candidates;
  return same !== undefined && free.score - same.score <= rescueFit ? words : null;
}

function verdictFor(
  words: readonly string[],
  fit: number,
  rivals: readonly (readonly string[])[],
  expected: Expectation,
): Verdict {
  const bare = (sentence: readonly string[]): readonly string[] =>
    isAddressed(expected, sentence) ? sentence.slice(expected.address.length) : sentence;
  if (bare(words).length === 0) return { kind: "address-only" };
  return {
    kind: "command",
    words: bare(words),
    confidence: Math.exp(-Math.max(0, fit) / 6),
    addressed: isAddressed(expected, words),
    rivals: rivals.map(bare).filter((rival) => rival.length > 0),
  };
}

const doubtful: Verdict = { kind: "none", why: "doubtful" };
const nothing = { verdict: { kind: "none", why: "chatter" }, words: [], isSettled: true } as const;
