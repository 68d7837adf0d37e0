import { grammarFor } from "../../../core/talk/grammar-for.ts";
import type { Grammar } from "../../../core/speech/grammar.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { understand } from "../../../core/talk/understand.ts";
import { eveningMoments } from "../../voice/evening-moments.ts";
import { eveningSentences } from "../../voice/evening-sentences.ts";
import { isInGrammar, spokenIntents } from "../../voice/judge-heard.ts";

/** One sentence, the moment it is said at, and what is listened for then. */
export type Asked = {
  readonly group: string;
  readonly sentence: string;
  readonly kitchen: Kitchen;
  readonly grammar: Grammar;
};

/** All sentences of all moments, those of one moment together: an ear's grammar is set once for each. */
export async function allSentences(): Promise<readonly Asked[]> {
  const moments = await eveningMoments();
  const grammars = new Map(Object.entries(moments).map(([name, kitchen]) => [name, grammarFor(kitchen)]));
  const all = eveningSentences.flatMap(({ name, moment, sentences }) =>
    sentences.flatMap((sentence): readonly Asked[] => {
      const grammar = grammars.get(moment);
      return grammar === undefined ? [] : [{ group: name, sentence, kitchen: moments[moment], grammar }];
    }),
  );
  checkSentences(all);
  return all;
}

/** A sentence that cannot be heard, or an intent without a sentence, would make the figures worthless. */
function checkSentences(all: readonly Asked[]): void {
  const faults = all.flatMap(({ sentence, kitchen, grammar }) => {
    if (!isInGrammar(sentence, grammar)) return [`"${sentence}" is not in the grammar of its moment`];
    return understand(sentence, kitchen).intent === null ? [`"${sentence}" is not understood`] : [];
  });
  const wanted = new Set(all.map(({ sentence, kitchen }) => understand(sentence, kitchen).intent?.type));
  const missing = [...spokenIntents].filter((intent) => !wanted.has(intent));
  if (missing.length > 0) faults.push(`no sentence wants ${missing.join(", ")}`);
  if (faults.length > 0) throw new Error(`tests/voice/evening-sentences.ts: ${faults.join("; ")}`);
}
