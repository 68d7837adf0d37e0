import { singularOf } from "../food/names.ts";
import { verbs } from "../pace/work-kind-table.ts";
import type { Dish, Ingredient, Step, StepId } from "../recipe/model.ts";
import type { Act } from "./preparation.ts";
import { preparationWords } from "./preparation-words-table.ts";

/** Where one of these stands, the words behind it are no longer about the verb before it. */
const ends: ReadonlySet<string> = new Set([
  ...Object.values(verbs).flatMap((words) => words.split(" ")),
  ...[...preparationWords.values()].map(({ verb }) => verb.split(" ")[0] ?? ""),
  ..."add put bring lay pour take keep heat fry simmer cook boil bake roast steam let cover press turn".split(
    " ",
  ),
  ..."over into onto on to until for from while so".split(" "),
]);

const pronouns: ReadonlySet<string> = new Set(["it", "them", "both", "each", "all"]);

const lastWord = (item: string): string =>
  singularOf(
    item
      .toLowerCase()
      .split(/[\s-]+/)
      .at(-1) ?? "",
  );

/** Whether a step's sentence tells the cook to do this to the food: "mince the garlic", "wash the apple and grate it". */
function tells(step: Step, { verb }: Act, item: string): boolean {
  const food = lastWord(item);
  const clauses = step.do.toLowerCase().split(/[;.:]/);
  const said: string[] = [];
  for (const clause of clauses) {
    const words = clause.match(/[a-z]+(?:-[a-z]+)*/g) ?? [];
    for (const [at, word] of words.entries()) {
      said.push(singularOf(word));
      if (word !== verb.split(" ")[0]) continue;
      const rest = words.slice(at + 1 + (verb.includes(" ") ? 1 : 0));
      const end = rest.findIndex((one) => ends.has(one));
      const about = end < 0 ? rest : rest.slice(0, end);
      if (about.map(singularOf).includes(food)) return true;
      if (pronouns.has(about[0] ?? "") && said.includes(food)) return true;
    }
  }
  return false;
}

/** The steps of the dish that are over before this one begins, whatever happens. */
function stepsBefore(dish: Dish, step: Step, seen = new Set<StepId>()): ReadonlySet<StepId> {
  for (const { step: id } of step.after) {
    const before = dish.steps.find((one) => one.id === id);
    if (before === undefined || seen.has(id)) continue;
    seen.add(id);
    stepsBefore(dish, before, seen);
  }
  return seen;
}

/**
 * Whether the dish's own steps tell the cook to do this to what goes in at `step`: that step itself, or one that is over
 * before it and takes none of the food for itself.
 */
export function isTold(act: Act, dish: Dish, step: Step, { id, item }: Ingredient): boolean {
  if (tells(step, act, item)) return true;
  const before = stepsBefore(dish, step);
  return dish.steps.some(
    (one) =>
      before.has(one.id) && one.uses.every(({ ingredient }) => ingredient !== id) && tells(one, act, item),
  );
}
