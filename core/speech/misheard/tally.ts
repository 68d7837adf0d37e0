import { numberWords } from "../../units/number-words.ts";
import type { Misheard } from "./misheard.ts";

/** How often one sentence was misheard. */
export type Tally = { readonly sentence: string; readonly times: number };

/** The sentences that the cook says they said, and that were heard as something else; the most often first. */
export function tallyOf(record: readonly Misheard[]): readonly Tally[] {
  const times = new Map<string, number>();
  for (const { meant, heard } of record)
    if (meant !== null && meant !== heard) times.set(meant, (times.get(meant) ?? 0) + 1);
  return [...times]
    .map(([sentence, count]) => ({ sentence, times: count }))
    .sort((a, b) => b.times - a.times || a.sentence.localeCompare(b.sentence, "en"));
}

/** In plain words: "“next step” was misheard three times." */
export function tallyWords({ sentence, times }: Tally): string {
  const often = times === 1 ? "once" : times === 2 ? "twice" : `${numberWords(times)} times`;
  return `“${sentence}” was misheard ${often}.`;
}
