import type { Mistake } from "../recipe/mistake.ts";
import { readYaml } from "../recipe/read-yaml.ts";
import { sentenceOf, shapeMistakes } from "../recipe/shape-mistakes.ts";
import { DAY_NAMES, weekFile, type DayName, type WeekFile } from "./week-file.ts";

/** One line of a day, its names not looked up yet. */
export type WrittenSitting =
  | { readonly kind: "cooked"; readonly meal: string; readonly servings: Readonly<Record<string, number>> }
  | { readonly kind: "leftover"; readonly dish: string; readonly servings: number | null };

/** A week as its file has it. */
export interface WrittenWeek {
  readonly name: string;
  readonly eaters: number;
  readonly days: readonly {
    readonly day: DayName;
    /** Counted from the first day, which is 0. */
    readonly number: number;
    readonly sittings: readonly WrittenSitting[];
  }[];
}

type Entry = NonNullable<WeekFile["days"][DayName]>[number];

function sittingOf(entry: Entry): WrittenSitting {
  if (typeof entry === "string") return { kind: "cooked", meal: entry, servings: {} };
  if ("meal" in entry) return { kind: "cooked", meal: entry.meal, servings: entry.servings ?? {} };
  return { kind: "leftover", dish: entry.leftover, servings: entry.servings ?? null };
}

/** How many days a day lies after another, from 0 to 6. */
const daysAfter = (first: DayName, day: DayName): number =>
  (DAY_NAMES.indexOf(day) - DAY_NAMES.indexOf(first) + DAY_NAMES.length) % DAY_NAMES.length;

/**
 * Reads a week; null with its mistakes when there are any.
 * @param file the name to put on mistakes
 */
export function readWeek(
  file: string,
  text: string,
): { readonly week: WrittenWeek | null; readonly mistakes: readonly Mistake[] } {
  const { written, mistakes } = readYaml(file, text);
  if (written === null) return { week: null, mistakes };
  const shape = weekFile.safeParse(written.value, { error: sentenceOf });
  if (!shape.success) return { week: null, mistakes: [...mistakes, ...shapeMistakes(shape.error, written)] };
  const { week: name, eaters, days } = shape.data;
  const given = Object.entries(days) as readonly (readonly [DayName, readonly Entry[]])[];
  const first = given[0]?.[0] ?? "monday";
  const all = given.map(([day, entries]) => {
    return { day, number: daysAfter(first, day), sittings: entries.map(sittingOf) };
  });
  const at = (path: readonly string[], sentence: string): Mistake => {
    return { file, line: written.lineOf(path), field: path.join("."), sentence };
  };
  const turned = all.find(({ number }, index) => index > 0 && number <= (all[index - 1]?.number ?? 0));
  const wrong = [
    ...mistakes,
    ...(all.length === 0 ? [at(["days"], "This week has no days; write one.")] : []),
    ...(turned === undefined
      ? []
      : [
          at(["days", turned.day], `${turned.day} stands in the wrong place; write the days in their order.`),
        ]),
  ];
  return { week: wrong.length === 0 ? { name, eaters, days: all } : null, mistakes: wrong };
}
