import type { Step } from "../recipe/model.ts";
import { workKinds, type WorkKind } from "./pace.ts";
import { verbs } from "./work-kind-table.ts";

const kinds: ReadonlyMap<string, WorkKind> = new Map(
  Object.entries(verbs).flatMap(([kind, words]) =>
    words.split(" ").map((verb) => [verb, workKinds.find((one) => one === kind) ?? "other"] as const),
  ),
);

/** "Finely chop" is chopping: words that only say how come first now and then. */
function leadingVerb(text: string): string {
  const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
  return words.find((word) => !/ly$|^(?:then|now|next|first)$/.test(word)) ?? "";
}

const needsHeat = (step: Step): boolean =>
  step.needs.some(({ kind }) => kind === "burner" || kind === "oven");

/**
 * What kind of work a step is, by its title's verb ("chop the onion") or else by the sentence's; null where the cook's
 * pace has no say: what is unattended, what stands in the cold, and what must not go on beyond its latest end.
 */
export function workKind(step: Step): WorkKind | null {
  const isKept = step.latest === "hard" || step.needs.some(({ kind }) => kind === "fridge");
  if (step.hands === "off" || isKept) return null;
  if (needsHeat(step)) return "stove";
  return kinds.get(leadingVerb(step.title)) ?? kinds.get(leadingVerb(step.do)) ?? "other";
}
