import type { Session } from "../../cook/session.ts";
import { spokenIngredient } from "../../food/ingredient-words.ts";
import type { Dish, Ingredient, Swap } from "../../recipe/model.ts";
import type { FoodLine } from "../find.ts";
import { asksWhich, isWithin, wordsIn } from "../find.ts";
import type { Intent, IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { foodNames } from "../names.ts";
import type { Consent, Outcome, Scene } from "../outcome.ts";
import { asksFor, asksLeave, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { breathWords, countWords, theDish } from "../speech.ts";
import { withFood } from "./amounts.ts";

/** One swap of one ingredient of one dish. */
type Offer = {
  readonly dish: Dish;
  readonly ingredient: Ingredient;
  readonly swap: Swap;
  readonly index: number;
};

const offersFor = (lines: readonly FoodLine[]): readonly Offer[] =>
  lines.flatMap(({ dish, ingredient }) =>
    ingredient.swaps.map((swap, index) => ({ dish, ingredient, swap, index })),
  );

/** What may stand in for a food. One swap is offered outright, several are named. */
export function instead(intent: IntentOf<"Instead">, scene: Scene, kitchen: Kitchen): Outcome {
  if (intent.food === null) return asksFor(intent, "Instead of what?");
  return withFood(
    intent.food,
    scene,
    kitchen,
    (item) => ({ ...intent, food: { by: "food", item } }),
    (lines) => {
      const all = offersFor(lines);
      const offers = allowedOf(all, kitchen);
      const [only] = offers;
      const item = lines[0]?.ingredient.item ?? "";
      if (only === undefined && all[0] !== undefined) return told(againstOf(all[0], kitchen));
      if (only === undefined) {
        const mayGo = lines.every(({ ingredient }) => ingredient.optional);
        return told(
          mayGo
            ? `Leave the ${item} out; nothing depends on it.`
            : `The recipe names nothing to use instead of ${item}.`,
        );
      }
      return offers.length === 1 ? offer(only, kitchen) : asksWhich(choicesOf(offers), `Instead of ${item}`);
    },
  );
}

function choicesOf(offers: readonly Offer[]): readonly { readonly name: string; readonly intent: Intent }[] {
  const several = new Set(offers.map(({ dish }) => dish.id)).size > 1;
  return offers.map((one) => ({
    name: several ? `${one.swap.use} in ${theDish(one.dish)}` : one.swap.use,
    intent: useOf(one),
  }));
}

const useOf = ({ dish, ingredient, swap }: Offer): Intent => ({
  type: "UseInstead",
  use: { by: "words", words: `${swap.use} in ${dish.id}` },
  food: { by: "food", item: ingredient.item },
});

/** What the diets have against a swap, in a sentence; "" where they allow it, or nobody can look it up yet. */
const againstOf = ({ swap }: Offer, kitchen: Kitchen): string =>
  kitchen.foods?.talk.against(swap.use, kitchen, kitchen.foods.book) ?? "";

/** What a diet forbids is not offered; who names it is told. */
const allowedOf = (offers: readonly Offer[], kitchen: Kitchen): readonly Offer[] =>
  offers.filter((one) => againstOf(one, kitchen) === "");

/** Tells the amount and the side effect, or what speaks against it, and asks for a yes. */
function offer(one: Offer, kitchen: Kitchen): Outcome {
  const why = againstOf(one, kitchen);
  return why === ""
    ? asksLeave(useOf(one), offerWords(one, breathWords))
    : asksLeave(useOf(one), `${why} Shall I note it all the same?`);
}

/** As much of an offer as there is breath for. */
function offerWords({ dish, ingredient, swap }: Offer, words: number): string {
  const amount = spokenIngredient(swap.amount ?? ingredient.amount, swap.use);
  const effect = swap.effect === null ? "" : ` ${swap.effect}`;
  const full = `${capital(amount)} instead, in ${theDish(dish)}.${effect} Shall I note that?`;
  const short = `${capital(amount)} instead.${effect} Shall I note that?`;
  // The longest side effects are told when the swap is noted.
  const bare = `${capital(amount)} instead. Shall I note that?`;
  return [full, short].find((text) => countWords(text) <= words) ?? bare;
}

/** Asks whether something else is to be taken for the first thing that a diet does not allow; null where nothing is. */
export function offerStandIn({ session }: Scene, kitchen: Kitchen): Outcome | null {
  const { foods } = kitchen;
  const finding = foods?.talk.barred(kitchen, foods.book) ?? null;
  const standIns = finding?.standIns ?? null;
  if (finding === null || standIns === null) return null;
  const lines = linesIn(session).filter(
    ({ dish, ingredient }) => dish.id === standIns.dish && ingredient.id === standIns.ingredient,
  );
  const [one] = offersFor(lines).filter(({ swap }) => standIns.foods.some(({ use }) => use === swap.use));
  if (one === undefined) return null;
  const words = offerWords(one, breathWords - countWords(finding.why));
  return asksLeave(useOf(one), `${finding.why} ${words}`);
}

const linesIn = ({ meal }: Session): readonly FoodLine[] =>
  meal.dishes.flatMap((dish) => dish.ingredients.map((ingredient) => ({ dish, ingredient })));

/** "Use lime juice instead": noted once the cook has said yes to the amount. */
export function useInstead(
  intent: IntentOf<"UseInstead">,
  scene: Scene,
  kitchen: Kitchen,
  consent: Consent,
): Outcome {
  const { use } = intent;
  if (use === null) return asksFor(intent, "Use what instead?");
  const offers = offersNamed(use, intent.food, scene.session);
  const [only] = offers;
  if (only === undefined) return told(noOffer(use, scene.session));
  if (offers.length > 1) return asksWhich(choicesOf(offers));
  if (consent === "wanted") return offer(only, kitchen);
  const { dish, ingredient, swap, index } = only;
  return ordered(
    kitchen,
    [{ type: "UseSwap", dish: dish.id, ingredient: ingredient.id, swap: index }],
    ({ session }) => {
      const { foods } = kitchen;
      const effect = swap.effect === null ? "" : ` ${swap.effect}`;
      const diet = foods?.talk.changed(scene.session.meal, session.meal, foods.book) ?? "";
      return `Noted: ${swap.use} instead of ${ingredient.item}.${effect} ${diet}`.trim();
    },
  );
}

function offersNamed(use: Mention, food: Mention | null, session: Session): readonly Offer[] {
  const said = wordsIn(use);
  const all = offersFor(linesIn(session));
  const exact = all.filter((one) => `${one.swap.use} in ${one.dish.id}` === said);
  const named =
    exact.length > 0
      ? exact
      : all.filter(({ swap }) => foodNames(swap.use).includes(said) || isWithin(said, swap.use));
  if (food === null) return named;
  const of = food.by === "food" ? food.item : wordsIn(food);
  const fitting = named.filter(
    ({ ingredient }) => ingredient.item === of || foodNames(ingredient.item).includes(of),
  );
  return fitting.length > 0 ? fitting : named;
}

function noOffer(use: Mention, session: Session): string {
  const uses = session.meal.dishes.flatMap((dish) =>
    dish.ingredients.flatMap(({ swaps }) => swaps.map((swap) => swap.use)),
  );
  const known = [...new Set(uses)].slice(0, 4);
  return known.length === 0
    ? "These recipes name no swaps."
    : `The recipes do not name ${wordsIn(use)}. They do name ${known.join(", ")}.`;
}
