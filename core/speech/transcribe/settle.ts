import type { TranscriberSize } from "../embedded-assets.ts";
import { type Expectation, isAddressed } from "../expectation.ts";
import type { Verdict } from "../verdict.ts";
import type { Opinion } from "./opinion.ts";
import { essence } from "./same-words.ts";
import type { Candidate } from "./search.ts";
import { settledNumber, teenOrTens, type TeenOrTens } from "./teens.ts";
import { isNumberWord } from "./written-forms.ts";

/** What is known besides, and what the second ear can be asked: what it hears in all, or among a few. */
export type Questions = {
  /** Whether a soft sound can be heard beside the voice. */
  readonly isClear: boolean;
  /** The sentence that a first look found likeliest. */
  readonly before: readonly string[] | null;
  readonly askSecond: () => Promise<readonly string[] | null>;
  readonly among: (sentences: readonly (readonly string[])[]) => Promise<readonly string[] | null>;
};

/** What the second ear alone believes must not be further than this from what a network would write. */
export const rescueFit = 18;

/**
 * What fits as well as this is believed without the second ear, which was wrong in seven of the 21 such sentences that it
 * was asked about, and the large network in none.
 */
const believedFit = 8;

/** What is done about an opinion: believed, asked about, or left. @param by the network whose opinion it is */
export async function settled(
  opinion: Opinion,
  by: TranscriberSize,
  expected: Expectation,
  { isClear, before, askSecond, among }: Questions,
): Promise<Verdict> {
  switch (opinion.kind) {
    case "clear": {
      const { words, fit } = opinion;
      // Two looks that come to a teen and to its tens are a doubt, however sure the second.
      if (before !== null && teenOrTens({ words }, { words: before }) !== null)
        return verdictFor(words, fit, [before], expected);
      if (fit <= believedFit) return verdictFor(words, fit, [], expected);
      const other = await askSecond();
      if (other === null && by === "careful") return doubtful;
      const rivals = other === null || essence(other) === essence(words) ? [] : [other];
      return verdictFor(words, fit, rivals, expected);
    }
    case "torn":
      return settledAmong(opinion, by, expected, { isClear, among });
    case "other": {
      // What the large network finds nothing in, the second ear took for something else twice as often as for what it was.
      const words = by === "careful" ? null : await askSecond();
      return words === null ? doubtful : verdictFor(words, rescueFit, [], expected);
    }
  }
}

/** Of several that are about as likely. */
async function settledAmong(
  opinion: Opinion & { readonly kind: "torn" },
  by: TranscriberSize,
  expected: Expectation,
  { isClear, among }: Pick<Questions, "isClear" | "among">,
): Promise<Verdict> {
  const [best, ...others] = opinion.between;
  const pair = onlyTeenOrTens(best, others);
  // Under noise a soft "n" is heard by the large network alone.
  if (pair !== null && (isClear || by === "careful")) {
    const sounded = await among([pair.teen.words, pair.tens.words]);
    const number = settledNumber(pair, sounded, { by, isClear });
    const rivals = number === null ? wordsOfAll(others) : [];
    return verdictFor((number ?? best).words, opinion.fit, rivals, expected);
  }
  const inDoubt = others.filter((other) => isNumberInDoubt(best, other));
  const canSettle = inDoubt.length < others.length;
  const sounded = canSettle ? await among(opinion.between.map(({ words }) => words)) : null;
  const same = ({ words }: Candidate): boolean => sounded !== null && essence(words) === essence(sounded);
  if (same(best)) return verdictFor(best.words, opinion.fit, wordsOfAll(inDoubt), expected);
  if (by === "careful" && opinion.fit > believedFit) return doubtful;
  // Nothing is settled, but of a name that nobody writes its sound tells more: what was asked may be answered so.
  const sounding = others.filter(same);
  const [first, ...rivals] = [...sounding, best, ...others.filter((other) => !sounding.includes(other))];
  return verdictFor((first ?? best).words, opinion.fit, wordsOfAll(rivals), expected);
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

const wordsOfAll = (candidates: readonly Candidate[]): readonly (readonly string[])[] =>
  candidates.map(({ words }) => words);

/** The pair, where nothing is in doubt but a teen or the tens of it. */
function onlyTeenOrTens(best: Candidate, others: readonly Candidate[]): TeenOrTens | null {
  const apart = others.filter(({ words }) => essence(words) !== essence(best.words));
  const [other, ...more] = apart;
  if (other === undefined || more.some(({ words }) => essence(words) !== essence(other.words))) return null;
  return teenOrTens(best, other);
}

/** A sentence that is believed, or asked about where there are rivals; the address by itself where it was no more. */
export function verdictFor(
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
    confidence: confidenceOf(fit),
    addressed: isAddressed(expected, words),
    rivals: rivals.map(bare).filter((rival) => rival.length > 0),
  };
}

/** A sentence as likely as this, beside what a network would write, may be all that was said. */
const certainFit = 2;

/** The words of a sentence that nothing speaks against, the address before them; null of any other verdict. */
export function certainWords(verdict: Verdict, { address }: Expectation): readonly string[] | null {
  if (verdict.kind !== "command" || verdict.rivals.length > 0) return null;
  if (verdict.confidence < confidenceOf(certainFit)) return null;
  return verdict.addressed ? [...address, ...verdict.words] : verdict.words;
}

const confidenceOf = (fit: number): number => Math.exp(-Math.max(0, fit) / 6);

const doubtful: Verdict = { kind: "none", why: "doubtful" };
