import { scaleCautions } from "../../amounts/cautions.ts";
import { shareOf } from "../../amounts/factor.ts";
import { isDishBegun } from "../../cook/change-servings.ts";
import type { ServingsWanted } from "../../cook/servings-wanted.ts";
import { spokenIngredient } from "../../food/ingredient-words.ts";
import { singularOf } from "../../food/names.ts";
import type { Dish } from "../../recipe/model.ts";
import { listed } from "../../recipe/nearest.ts";
import type { Measured } from "../../units/amount.ts";
import { numberWords } from "../../units/number-words.ts";
import { compare, mixed, mul, ONE, ratio } from "../../units/rational.ts";
import type { FoodLine } from "../find.ts";
import { asksWhich, findDish, wordsIn } from "../find.ts";
import type { IntentOf } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, asksLeave, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { inBreath, inBreaths, theDish } from "../speech.ts";
import { withLine } from "./changing.ts";

const isBegun = ({ id }: Dish, { session }: Scene): boolean => isDishBegun(session, id);

const helpings = (count: number, { yield: { of } }: Dish): string =>
  `${numberWords(count)} ${count === 1 ? singularOf(of) : of}`;

/** "Make the soup for six", "cook for six": what is begun stays as it is. */
export function makeFor(intent: IntentOf<"MakeFor">, scene: Scene, kitchen: Kitchen): Outcome {
  const { servings, dish } = intent;
  if (servings === null) return asksFor(intent, "For how many?");
  if (dish === null) return makeAllFor(servings, scene, kitchen);
  const hit = findDish(dish, scene.session);
  if (hit.kind === "several")
    return asksWhich(
      hit.values.map((one) => ({
        name: one.name,
        intent: { ...intent, dish: { by: "dish", dish: one.id } },
      })),
    );
  if (hit.kind === "none")
    return told(
      `There is no ${wordsIn(dish)} in this meal. We have ${listed(scene.session.meal.dishes.map(theDish))}.`,
    );
  return made([{ dish: hit.value.id, servings }], [], scene, kitchen);
}

function makeAllFor(servings: number, scene: Scene, kitchen: Kitchen): Outcome {
  const { dishes } = scene.session.meal;
  const open = dishes.filter((dish) => !isBegun(dish, scene) && dish.yield.servings !== servings);
  const begun = dishes.filter((dish) => isBegun(dish, scene) && dish.yield.servings !== servings);
  if (open.length === 0)
    return told(
      begun.length === 0
        ? `Everything is for ${numberWords(servings)} already.`
        : `Too late: ${listed(begun.map(theDish))} ${begun.length === 1 ? "is" : "are"} begun.`,
    );
  return made(
    open.map(({ id }) => ({ dish: id, servings })),
    begun,
    scene,
    kitchen,
  );
}

/** @param begun what stays as it is, where all were meant */
function made(
  wanted: readonly ServingsWanted[],
  begun: readonly Dish[],
  scene: Scene,
  kitchen: Kitchen,
): Outcome {
  const then = ordered(
    kitchen,
    wanted.map((one) => ({ type: "ChangeServings", ...one })),
    () => "",
  );
  if (then.orders.length === 0) return then;
  const dishes = scene.session.meal.dishes.filter(({ id }) => wanted.some(({ dish }) => dish === id));
  const servings = wanted[0]?.servings ?? 0;
  const cautions = dishes.flatMap((dish) =>
    scaleCautions(dish, ratio(servings, dish.yield.servings)).map(({ sentence }) => sentence),
  );
  const said = inBreaths([
    ...(dishes.length === 1
      ? dishes.map((dish) => `${capital(helpings(servings, dish))} of ${theDish(dish)} now; amounts follow.`)
      : [`${capital(listed(dishes.map(theDish)))} for ${numberWords(servings)} now; amounts follow.`]),
    ...(begun.length === 0
      ? []
      : [
          `${capital(listed(begun.map(theDish)))} ${begun.length === 1 ? "is" : "are"} begun and ${begun.length === 1 ? "stays" : "stay"}.`,
        ]),
    ...new Set(cautions),
  ]);
  return { ...then, say: said.say, question: said.question };
}

/** "I have only two hundred grams of lentils": what that is enough for, and an offer to make so much. */
export function haveOnly(intent: IntentOf<"HaveOnly">, scene: Scene, kitchen: Kitchen): Outcome {
  const { amount, food } = intent;
  if (food === null || amount === null)
    return told("Say how much you have of what, like two cups of lentils.");
  return withLine({ ...intent, food }, "For which dish", scene, kitchen, (line) =>
    enoughFor(line, amount, scene, kitchen),
  );
}

function enoughFor({ dish, ingredient }: FoodLine, have: Measured, scene: Scene, kitchen: Kitchen): Outcome {
  const { amount: need, item } = ingredient;
  if (need.kind === "to-taste") return told(`The recipe has ${item} to taste: what you have is enough.`);
  const foods = kitchen.foods?.book.larder.foods ?? new Map<never, never>();
  const share = shareOf(foods, ingredient, need, have);
  if (!share.ok) return inBreaths([`The recipe takes ${spokenIngredient(need, item)}.`, share.error]);
  const takes = `${capital(theDish(dish))} takes ${spokenIngredient(need, item)}`;
  if (compare(share.value, ONE) >= 0) return told(`That is enough. ${takes}.`);
  const servings = Number(mixed(mul(share.value, ratio(dish.yield.servings))).whole);
  if (servings < 1) return told(`That is not enough for ${helpings(1, dish)} of ${theDish(dish)}. ${takes}.`);
  const enough = `That is enough for ${numberWords(servings)} of the ${helpings(dish.yield.servings, dish)} of ${theDish(dish)}.`;
  if (isBegun(dish, scene)) return told(inBreath([enough, "It is begun, so its other amounts stay."]));
  return asksLeave(
    { type: "MakeFor", servings, dish: { by: "dish", dish: dish.id } },
    `${enough} Shall I make it for ${numberWords(servings)}?`,
  );
}
