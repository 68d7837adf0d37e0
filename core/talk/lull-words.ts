import { listed } from "../cook/say-call.ts";
import type { LullWork } from "../plan/lull-work.ts";
import type { Task } from "../plan/model.ts";
import { numberWords } from "../units/number-words.ts";

/** The steps by their titles, each once; of more than `most` the rest is counted. */
function named(tasks: readonly Task[], most: number): string {
  const titles = [...new Set(tasks.map(({ step }) => step.title))];
  if (titles.length <= most) return listed(titles);
  return listed([...titles.slice(0, most - 1), `${numberWords(titles.length - most + 1)} more`]);
}

/**
 * What stays in the lull that the cook has wished for, and why: one sentence for what keeps no longer, one for what has
 * no time before; none where nothing stays.
 * @param most how many steps a sentence names
 */
export function lullSentences({ bound, crowded }: LullWork, most: number): readonly string[] {
  const keeps = bound.length === 1 ? "it keeps" : "they keep";
  return [
    ...(bound.length === 0 ? [] : [`Still then, as ${keeps} no longer: ${named(bound, most)}.`]),
    ...(crowded.length === 0 ? [] : [`Still then, as there is no time before: ${named(crowded, most)}.`]),
  ];
}
