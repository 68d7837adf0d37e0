import { planInputOf } from "../../cook/run-sheet.ts";
import type { Span } from "../../units/duration.ts";
import { spokenDuration } from "../../units/duration.ts";
import type { Seconds } from "../../units/quantity.ts";
import { kindWords } from "../../pace/say-pace.ts";
import type { PaceWish } from "../../pace/pace.ts";
import { lullWork } from "../../plan/lull-work.ts";
import { lullSentences } from "../lull-words.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, ordered, told } from "../outcome.ts";
import { breathWords, clockAt, countWords, inParts, sayParts } from "../speech.ts";

/** So many steps are named in one breath. */
const mostNamed = 2;

const stays = ({ session, sheet }: Scene, kitchen: Kitchen): readonly string[] =>
  lullSentences(lullWork(planInputOf(session, kitchen.now), sheet), mostNamed);

/** "Nothing in the last ten minutes": kept free as far as it goes; what stays there is named. */
export function keepFree(span: Span | null, kitchen: Kitchen): Outcome {
  if (span === null) return asksFor({ type: "KeepFree", span: null }, "How many minutes before dinner?");
  let rest: readonly string[] = [];
  const outcome = ordered(kitchen, [{ type: "SetLull", length: span.high }], (then) => {
    rest = stays(then, kitchen);
    return lullSet(span.high, then, kitchen);
  });
  const { say, question } = sayParts(inBreaths([outcome.say, ...rest]));
  return { ...outcome, say, question };
}

/** Sentences put together as far as one breath holds them: none of them is left out. */
const inBreaths = (sentences: readonly string[]): readonly string[] =>
  sentences.reduce<readonly string[]>((parts, sentence) => {
    const both = `${parts.at(-1) ?? ""} ${sentence}`.trim();
    return countWords(both) < breathWords ? [...parts.slice(0, -1), both] : [...parts, sentence];
  }, []);

const lullSet = (length: Seconds, { sheet }: Scene, kitchen: Kitchen): string =>
  `Last ${spokenDuration(length)} kept free, ready at ${clockAt(sheet.readyAt, kitchen)}.`;

/** The last minutes before dinner are like any others again. */
export function keepNoneFree(kitchen: Kitchen): Outcome {
  return ordered(
    kitchen,
    [{ type: "SetLull", length: null }],
    ({ sheet }) => `No time is kept free any more. Ready at ${clockAt(sheet.readyAt, kitchen)}.`,
  );
}

const wishWords: Readonly<Record<PaceWish, string>> = {
  slower: "slower",
  faster: "faster",
  "as-written": "as the recipes say",
};

/** "What did I wish for?": all that the cook has said of how the evening is to be planned. */
export function askWishes({ session }: Scene): Outcome {
  const { lull, paces } = session;
  const wishes = [
    ...(lull === null ? [] : [`the last ${spokenDuration(lull)} before dinner free`]),
    ...paces.flatMap(({ kind, wish }) => (wish === null ? [] : [`${kindWords[kind]} ${wishWords[wish]}`])),
  ];
  return wishes.length === 0 ? told("You have wished for nothing so far.") : inParts("You wished:", wishes);
}
