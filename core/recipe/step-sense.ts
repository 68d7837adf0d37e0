import pluralize from "pluralize";
import { formatDuration, span } from "../units/duration.ts";
import { hours } from "../units/quantity.ts";
import type { StepFile, WayFile } from "./dish-file.ts";
import type { Draft, Finding } from "./draft.ts";
import { inWords, itemOf } from "./draft.ts";
import type { FieldPath } from "./mistake.ts";
import type { Attention } from "./model.ts";
import { nearest } from "./nearest.ts";

/** Nobody's hands are in one step for longer: what is meant runs by itself. */
const LONGEST_BY_HAND = hours(4);

function firstMoment(moment: Attention): number {
  switch (moment.kind) {
    case "every":
      return moment.every;
    case "at":
      return moment.after;
    case "before-end":
      return moment.before;
  }
}

/**
 * What makes no sense in the work of a step or of one of its ways.
 * @param place the way to its fields
 */
export function workFindings(place: FieldPath, work: WayFile): readonly Finding[] {
  const found: Finding[] = [];
  const at = (field: string, sentence: string) => void found.push({ path: [...place, field], sentence });
  const { high } = work.time;
  if (work.hands !== "off") {
    if (work.attend !== undefined) {
      at(
        "attend",
        `Only a step that runs by itself needs attention; write "hands: off", or put it into the sentence.`,
      );
    }
    if (high > LONGEST_BY_HAND) {
      at(
        "time",
        `Nobody's hands are busy for ${formatDuration(span(high))}; write "hands: off" or check the time.`,
      );
    }
  }
  for (const moment of work.attend ?? []) {
    if (firstMoment(moment) >= high) {
      at("attend", `"${moment.do}" would never be called, for the step ends before; shorten its time.`);
    }
  }
  return found;
}

function stepFindings(id: string, step: StepFile): readonly Finding[] {
  const path = ["steps", id];
  const found = workFindings(path, step);
  if (id !== "nothing") return found;
  const sentence = `A step cannot be called "nothing", which stands for no step in "after"; rename it.`;
  return [...found, { path: [...path, "do"], sentence }];
}

/** Items that are told apart only by their plural are the same word to the ear. */
const spokenItem = (item: string): string => pluralize.singular(item.toLowerCase().trim());

function repeated(
  words: readonly (readonly [id: string, word: string])[],
  finding: (id: string, word: string, first: string) => Finding,
): readonly Finding[] {
  const first = new Map<string, string>();
  return words.flatMap(([id, word]) => {
    const before = first.get(spokenItem(word));
    if (before !== undefined) return [finding(id, word, before)];
    first.set(spokenItem(word), id);
    return [];
  });
}

function itemFindings(draft: Draft): readonly Finding[] {
  const items = [...draft.ingredients].flatMap(([id, file]) =>
    file === null ? [] : [[id, itemOf(id, file)] as const],
  );
  return repeated(items, (id, item, before) => ({
    path: ["ingredients", id],
    sentence: `"${item}" is already the spoken name of "${before}"; give one of them a name of its own.`,
  }));
}

function titleFindings(draft: Draft): readonly Finding[] {
  const titles = [...draft.steps].map(([id, file]) => [id, file?.title ?? inWords(id)] as const);
  return repeated(titles, (id, title, before) => ({
    path: ["steps", id],
    sentence: `"${title}" is already the title of step "${before}"; give one of them a title of its own.`,
  }));
}

function swapFindings(draft: Draft): readonly Finding[] {
  return [...draft.ingredients].flatMap(([id, file]) =>
    (file?.swaps ?? []).flatMap(({ changes }, index) =>
      Object.keys(changes ?? {})
        .filter((other) => other === id || !draft.ingredients.has(other))
        .map((other) => {
          const meant = nearest(
            other,
            [...draft.ingredients.keys()].filter((key) => key !== id),
          );
          const advice = meant === null ? "name one that is listed." : `did you mean "${meant}"?`;
          const path = ["ingredients", id, "swaps", index, "changes", other];
          if (other === id)
            return {
              path,
              sentence: `A swap for "${id}" cannot change "${id}" itself; use "amount" instead.`,
            };
          return { path, sentence: `The swap changes "${other}", which is not listed; ${advice}` };
        }),
    ),
  );
}

/** What is well written and still makes no sense in a kitchen. */
export function senseFindings(draft: Draft): readonly Finding[] {
  return [
    ...itemFindings(draft),
    ...swapFindings(draft),
    ...titleFindings(draft),
    ...[...draft.steps].flatMap(([id, file]) => (file === null ? [] : stepFindings(id, file))),
  ];
}
