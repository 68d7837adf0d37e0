import { readDish } from "../../../core/recipe/read-dish.ts";
import type { Dish } from "../../../core/recipe/model.ts";

/** A dish without a mistake, written by hand; tests spoil one line of it. */
export const BEAN_POT = `dish: Bean Pot
says: [beans]
about: Beans with greens.
yield: 4 bowls
ingredients:
  beans: { item: cooked beans, amount: 3 cups }
  greens: 1 bunch, washed
  water: 2 cups
  pepper: { item: black pepper, amount: to taste }
steps:
  cut-the-greens:
    do: Cut the greens.
    with: greens
    time: 4-6 min
  boil-the-beans:
    do: Boil the beans in the first part of the water.
    with: { beans, water: 1 1/2 cups }
    hands: off
    time: 20 min
    attend:
      every 5 min: Stir the beans.
    needs: { burner: 1 }
    after: nothing
  finish-the-pot:
    do: Stir in the greens, the pepper and the rest of the water.
    with: [water, pepper]
    time: 5 min
    after: [cut-the-greens, boil-the-beans]
`;

/** The text with one piece changed; throws when the piece is not there, so that no test spoils nothing. */
export function spoilt(text: string, from: string, to: string): string {
  if (!text.includes(from)) throw new Error(`not in the text: ${from}`);
  return text.replace(from, to);
}

/** What is said about a dish file, without the file's name: line, field, sentence. */
export function complaints(
  text: string,
): readonly (readonly [line: number, field: string, sentence: string])[] {
  return readDish("pot.yaml", "pot", text).mistakes.map(({ line, field, sentence }) => [
    line,
    field,
    sentence,
  ]);
}

/** The dish of a text that has no mistakes. */
export function dishOf(text: string): Dish {
  const { dish, mistakes } = readDish("pot.yaml", "pot", text);
  if (dish === null) throw new Error(mistakes.map(({ line, sentence }) => `${line}: ${sentence}`).join("\n"));
  return dish;
}
