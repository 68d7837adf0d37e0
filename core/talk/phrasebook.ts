import type { Topic } from "./intent.ts";
import type { PhraseEntry } from "./phrase-entry.ts";
import { amountPhrases } from "./phrases/amounts.ts";
import { answerPhrases } from "./phrases/answers.ts";
import { askingPhrases } from "./phrases/asking.ts";
import { changingPhrases } from "./phrases/changing.ts";
import { eatingPhrases } from "./phrases/eating.ts";
import { eveningPhrases } from "./phrases/evening.ts";
import { explainingPhrases } from "./phrases/explaining.ts";
import { helperPhrases } from "./phrases/helpers.ts";
import { servingPhrases } from "./phrases/servings.ts";
import { helpfulPhrases } from "./phrases/help.ts";
import { leftPhrases } from "./phrases/left.ts";
import { listPhrases } from "./phrases/list.ts";
import { misePhrases } from "./phrases/mise.ts";
import { nextTimePhrases } from "./phrases/next-time.ts";
import { movingPhrases } from "./phrases/moving.ts";
import { timerChangePhrases } from "./phrases/timer-changes.ts";
import { timerPhrases } from "./phrases/timers.ts";
import { voicePhrases } from "./phrases/voice.ts";
import { pacePhrases } from "./phrases/pace.ts";
import { wishPhrases } from "./phrases/wishes.ts";
import { wayPhrases } from "./phrases/ways.ts";

/**
 * Everything that can be said. The recogniser's grammar, the parser and the help pages are all read from here,
 * so what is heard, what is understood and what is promised are one list.
 */
export const phrasebook: readonly PhraseEntry[] = [
  ...movingPhrases,
  ...helperPhrases,
  ...eveningPhrases,
  ...timerPhrases,
  ...timerChangePhrases,
  ...amountPhrases,
  ...askingPhrases,
  ...eatingPhrases,
  ...explainingPhrases,
  ...helpfulPhrases(examplesOf),
  ...voicePhrases,
  ...wayPhrases,
  ...wishPhrases,
  ...pacePhrases,
  ...leftPhrases,
  ...listPhrases,
  ...misePhrases,
  ...changingPhrases,
  ...servingPhrases,
  ...nextTimePhrases,
  ...answerPhrases,
];

/** One example of each thing that can be said in a chapter, in the order of the phrasebook. */
export function examplesOf(topic: Topic): readonly string[] {
  return phrasebook.flatMap((entry) =>
    entry.topic === topic && entry.example !== null ? [entry.example] : [],
  );
}
