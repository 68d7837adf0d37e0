import type { FoodForms } from "./names.ts";
import { foodForms } from "./names.ts";

/** Which of the candidates was meant. `nearest`: at most three that sound or look alike, the likeliest first. */
export type NameMatch =
  | { readonly kind: "exact"; readonly name: string }
  | { readonly kind: "several"; readonly names: readonly string[] }
  | { readonly kind: "none"; readonly nearest: readonly string[] };

type Test = (spoken: FoodForms, candidate: FoodForms) => boolean;

const words = (text: string): readonly string[] => text.split(" ");

/** "lentil" heads "red lentil"; what stands before it only describes it. */
const isHead: Test = (spoken, candidate) => candidate.undressed.endsWith(` ${spoken.undressed}`);

const isWithin: Test = (spoken, candidate) => {
  const known = new Set(words(candidate.undressed));
  return words(spoken.undressed).every((word) => known.has(word));
};

/** Surest first. A looser test is asked only when no candidate passes a stricter one. */
const TESTS: readonly Test[] = [
  (spoken, candidate) => spoken.plain === candidate.plain,
  (spoken, candidate) => spoken.itself === candidate.itself,
  (spoken, candidate) => spoken.undressed === candidate.undressed,
  isHead,
  isWithin,
];

type Candidate = { readonly name: string; readonly forms: FoodForms };

/**
 * Finds a food or dish by how it was said: number, articles, accents, hyphens and the part it is counted in do not
 * matter ("the garlic cloves" is "garlic"), and a part of the name will do ("lentils" is "red lentils").
 * Several equally good candidates come back for the cook to choose. A name merely like another is never taken
 * for it: in a strict diet a wrong food is worse than a question.
 */
export function matchName(spoken: string, candidates: readonly string[]): NameMatch {
  const asked = foodForms(spoken);
  if (asked.plain === "") return { kind: "none", nearest: [] };
  const known = [...new Set(candidates)].map((name) => ({ name, forms: foodForms(name) }));
  for (const test of TESTS) {
    const names = known.filter(({ forms }) => test(asked, forms)).map(({ name }) => name);
    const [name, ...others] = names;
    if (name !== undefined) return others.length === 0 ? { kind: "exact", name } : { kind: "several", names };
  }
  return { kind: "none", nearest: nearestNames(asked, known) };
}

/** The share of letters that may differ in a suggestion. */
const TOLERANCE = 0.4;

function nearestNames(asked: FoodForms, known: readonly Candidate[]): readonly string[] {
  return known
    .map(({ name, forms }) => ({ name, distance: unlikeness(asked.itself, forms.itself) }))
    .filter(({ distance }) => distance <= TOLERANCE)
    .sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : 1))
    .slice(0, 3)
    .map(({ name }) => name);
}

/** 0 for the same name, 1 for nothing in common; the best of the whole and of its single words. */
function unlikeness(spoken: string, candidate: string): number {
  const pairs = words(spoken).flatMap((a) => words(candidate).map((b) => [a, b] as const));
  return Math.min(
    ...[[spoken, candidate] as const, ...pairs]
      .filter(([a, b]) => Math.min(a.length, b.length) >= 3)
      .map(([a, b]) => editDistance(a, b) / Math.max(a.length, b.length)),
    1,
  );
}

/** Letters to add, drop, change or swap with their neighbour (optimal string alignment distance). */
function editDistance(a: string, b: string): number {
  let [before, row] = [[] as readonly number[], Array.from({ length: b.length + 1 }, (_, index) => index)];
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwap ? (before[j - 2] ?? 0) + 1 : Infinity;
      next.push(Math.min(change, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    [before, row] = [row, next];
  }
  return row[b.length] ?? 0;
}
