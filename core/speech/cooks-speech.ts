import type { Grammar } from "./grammar.ts";
import type { HeardEvent } from "./hearing-event.ts";
import { asWritten, respelt, type Respelling } from "./respelling.ts";
import type { Verdict } from "./verdict.ts";

/** Between a grammar as it is written and an ear that is told how this cook says it. */
export type CooksSpeech = {
  /** What the ear listens for; the very same for the same grammar. */
  readonly grammar: (written: Grammar) => Grammar;
  /** What was heard, in the grammar's own words. */
  readonly words: (heard: readonly string[]) => readonly string[];
  readonly heard: (event: HeardEvent) => Pick<HeardEvent, "verdict" | "sound">;
};

/** For one list of respellings; another list, another one. */
export function cooksSpeech(respellings: readonly Respelling[]): CooksSpeech {
  let last: { readonly written: Grammar; readonly said: Grammar } | null = null;
  const words = (heard: readonly string[]): readonly string[] => asWritten(heard, respellings);
  const verdictOf = (verdict: Verdict): Verdict =>
    verdict.kind === "command"
      ? { ...verdict, words: words(verdict.words), rivals: verdict.rivals.map(words) }
      : verdict;
  return {
    grammar: (written) => {
      if (last?.written !== written) last = { written, said: respelt(written, respellings) };
      return last.said;
    },
    words,
    heard: ({ verdict, sound }) => ({
      verdict: verdictOf(verdict),
      sound: sound === null ? null : { ...sound, words: words(sound.words) },
    }),
  };
}
