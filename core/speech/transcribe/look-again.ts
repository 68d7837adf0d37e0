import { toAutomaton } from "../automaton.ts";
import type { TranscriberSize } from "../embedded-assets.ts";
import type { Expectation } from "../expectation.ts";
import type { SecondOpinion } from "../second-opinion.ts";
import { grammarOfSentences } from "./grammar-of-sentences.ts";
import { type Opinion, opinionOf } from "./opinion.ts";
import { type Candidate, patientSearch, quickSearch, search, type SearchSettings } from "./search.ts";
import { rescueFit } from "./settle.ts";
import type { Speller } from "./speller.ts";
import type { TakenIn, Transcriber } from "./transcriber.ts";
import { WordPaths } from "./word-paths.ts";

/** All that an utterance is considered with. */
export type Considering = {
  /** The small network, which is soon done. */
  readonly quick: Transcriber;
  /** The large one, which hears better and takes twice as long; null where it is not there. */
  readonly careful: Transcriber | null;
  readonly second: SecondOpinion;
  readonly speller: Speller;
  readonly paths: WordPaths;
  readonly expected: Expectation;
  /** Asked now and then: true where nobody wants the answer any more. */
  readonly isGivenUp: () => Promise<boolean>;
};

/** What every look at one utterance goes by. */
export type Known = Pick<SearchSettings, "speechS" | "address" | "isAddressed" | "isGivenUp">;

/** An utterance as one of the networks took it in. */
export type Reading = { readonly sound: TakenIn; readonly by: TranscriberSize };

/** What a second look came to, and how likely it finds that the address was said first. */
export type Again = Reading & { readonly opinion: Opinion; readonly called: number };

/** As well as this one of the few must fit, or all sentences are looked through: in noise the right one is often missing. */
const narrowFit = { clear: 6, noisy: 3 } as const;

/**
 * A second look. The large network goes through what the small one found possible, and through everything only where
 * none of that fits: of 127 sentences that the small one was not sure of, in the quiet and in noise, it had found the
 * right one for 108, and the large one then chose as well as among all, in a third of the time.
 */
export async function lookAgain(
  utterance: Float32Array,
  candidates: readonly Candidate[],
  { sound, known, isClear }: { readonly sound: TakenIn; readonly known: Known; readonly isClear: boolean },
  what: Considering,
): Promise<Again> {
  const { careful, paths, speller, expected } = what;
  const reading: Reading =
    careful === null ? { sound, by: "quick" } : { sound: await careful.takeIn(utterance), by: "careful" };
  const look = async (
    among: WordPaths,
    settings: typeof quickSearch | typeof patientSearch,
  ): Promise<Again> => {
    const { tokens } = careful ?? what.quick;
    const found = await search(reading.sound.write(), among, tokens(), { ...settings, ...known });
    return { ...reading, opinion: opinionOf(found, expected, reading.by), called: found.called };
  };
  const possible = candidates.map(({ words }) => words);
  const few = careful === null ? null : pathsOf(possible, speller);
  const narrow = few === null ? null : await look(few, quickSearch);
  if (narrow !== null && fitOf(narrow) <= narrowFit[isClear ? "clear" : "noisy"]) return narrow;
  const wide = await look(paths, patientSearch);
  // A search among all may lose on its way what a search among few could not.
  return narrow !== null && fitOf(narrow) < fitOf(wide) ? narrow : wide;
}

const fitOf = ({ opinion }: Again): number => (opinion.kind === "other" ? Infinity : opinion.fit);

/** What the second ear hears in the whole grammar, where a network finds it at least possible. */
export async function otherReading(
  utterance: Float32Array,
  { sound }: Reading,
  known: Known,
  { quick, second, speller, expected }: Considering,
): Promise<readonly string[] | null> {
  const words = await second.ofAll(utterance, expected);
  const paths = words === null ? null : pathsOf([words], speller);
  if (paths === null) return null;
  const settings = { ...patientSearch, ...known, isAddressed: false };
  const { free, candidates } = await search(sound.write(), paths, quick.tokens(), settings);
  const [same] = candidates;
  return same !== undefined && free.score - same.score <= rescueFit ? words : null;
}

/** The ways to write a few sentences; null where there are none. */
function pathsOf(sentences: readonly (readonly string[])[], speller: Speller): WordPaths | null {
  if (sentences.length === 0) return null;
  const grammar = grammarOfSentences(sentences);
  const automaton = toAutomaton({ grammar, address: null, mode: "open", stopSentences: [] });
  return automaton.ok ? new WordPaths(automaton.value, speller) : null;
}
