import { normaliseFood } from "../food/names.ts";
import type { IngredientFile } from "./dish-file.ts";
import type { Draft, Finding } from "./draft.ts";
import { inWords } from "./draft.ts";

/** The phrase lengths that a long ingredient has; a line is held to the same. */
const LONGEST = { item: 60, prep: 80 };

/** Whether a line's food is what its key names: "black pepper" under "pepper", but no "red pepper" under "red-onion". */
function isSameFood(id: string, item: string): boolean {
  const [key, food] = [normaliseFood(inWords(id)).split(" "), normaliseFood(item).split(" ")];
  return key.includes(food.at(-1) ?? "") || food.includes(key.at(-1) ?? "");
}

function lineSentence(id: string, { line, item, amount, prep }: IngredientFile): string | null {
  if (line === null) return null;
  if (prep !== null && prep.length > LONGEST.prep)
    return `What is done to it has ${prep.length} characters; shorten it to ${LONGEST.prep}.`;
  if (item === null) return null;
  if (item.length > LONGEST.item)
    return `"${item}" has ${item.length} characters; shorten it to ${LONGEST.item}.`;
  if (isSameFood(id, item)) return null;
  return amount.kind === "measured" && amount.unit === "piece"
    ? `"${item}" is not a unit I know; write one like cups, grams or cloves.`
    : `The line is about "${item}", but is named "${inWords(id)}"; use the same word in both, or write item and amount apart.`;
}

/** What makes no sense in ingredients that are written on one line. */
export function lineFindings(draft: Draft): readonly Finding[] {
  return [...draft.ingredients].flatMap(([id, file]): readonly Finding[] => {
    const sentence = file === null ? null : lineSentence(id, file);
    return sentence === null ? [] : [{ path: ["ingredients", id], sentence }];
  });
}

/** The draft with the ingredients of these findings marked as broken, so that one mistake is told once. */
export function withoutBroken(draft: Draft, findings: readonly Finding[]): Draft {
  const broken = new Set(findings.map(({ path }) => path[1]));
  const ingredients = [...draft.ingredients].map(([id, file]) => [id, broken.has(id) ? null : file] as const);
  return { ...draft, ingredients: new Map(ingredients) };
}
