import { listed } from "../../cook/say-call.ts";
import { spokenIngredient } from "../../food/ingredient-words.ts";
import type { Task } from "../../plan/model.ts";
import type { Amount } from "../../units/amount.ts";
import { scaleAmount } from "../../units/amount.ts";
import { spokenAmount } from "../../units/amount-words.ts";
import { ratio } from "../../units/rational.ts";
import { sameAmounts, sumAmounts } from "../../units/sum-amounts.ts";
import type { FoodLine } from "../find.ts";
import { asksWhich, findDish, findFood, wordsIn } from "../find.ts";
import { currentTask, findTask, isOpen } from "../find-task.ts";
import type { IntentOf, Mention, Scope } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { breathWords, countWords, inParts, theDish } from "../speech.ts";

/** How much of a food: in the step in hand, a dish, the meal, or what is still to come. */
export function howMuch(intent: IntentOf<"HowMuch">, scene: Scene, kitchen: Kitchen): Outcome {
  if (intent.food === null) return asksFor(intent, "How much of what?");
  return withFood(
    intent.food,
    scene,
    kitchen,
    (item) => ({ ...intent, food: { by: "food", item } }),
    (lines) => told(answer(lines, intent.scope, scene, kitchen)),
  );
}

/** Finds the food and goes on with it; asks which, or says what there is. */
export function withFood(
  mention: Mention,
  scene: Scene,
  kitchen: Kitchen,
  intent: (
    item: string,
  ) => IntentOf<"HowMuch" | "Instead" | "UseInstead" | "ChangeAmount" | "HaveOnly" | "NextTime">,
  go: (lines: readonly FoodLine[]) => Outcome,
): Outcome {
  const hit = findFood(mention, scene.session);
  if (hit.kind === "one") return go(hit.value);
  if (hit.kind === "none") return noSuchFood(hit.asked, scene, kitchen);
  const items = hit.values.flatMap((lines) => lines[0]?.ingredient.item ?? []);
  const inStep = usedNow(scene, kitchen).filter((item) => items.includes(item));
  const only = hit.values.find((lines) => lines[0]?.ingredient.item === inStep[0]);
  // The step in hand decides where it takes just one of them.
  if (inStep.length === 1 && only !== undefined) return go(only);
  return asksWhich(items.map((item) => ({ name: item, intent: intent(item) })));
}

function usedNow(scene: Scene, kitchen: Kitchen): readonly string[] {
  const task = currentTask(scene, kitchen);
  return task === null
    ? []
    : task.step.uses.flatMap(
        ({ ingredient }) => task.dish.ingredients.find(({ id }) => id === ingredient)?.item ?? [],
      );
}

function noSuchFood(asked: string, scene: Scene, kitchen: Kitchen): Outcome {
  const now = usedNow(scene, kitchen);
  const all = scene.session.meal.dishes.flatMap((dish) => dish.ingredients.map(({ item }) => item));
  const items = [...new Set(now.length > 0 ? now : all)];
  return inParts(
    `There is no ${asked} in this meal. ${now.length > 0 ? "This step takes" : "It takes"}`,
    items,
  );
}

/** One place where a food goes in. */
type UseOf = { readonly task: Task; readonly amount: Amount };

/** All uses of a food; a batch takes its share of the step's amount. */
function usesOf(lines: readonly FoodLine[], { session }: Scene): readonly UseOf[] {
  return session.tasks.flatMap((task) => {
    const line = lines.find(({ dish }) => dish.id === task.dish.id);
    const uses = task.step.uses.filter(({ ingredient }) => ingredient === line?.ingredient.id);
    const total = task.step.batch?.of ?? 1;
    const share = task.batch === null ? ratio(1) : ratio(Math.round(task.batch.pieces), Math.round(total));
    return uses.map(({ amount }) => ({ task, amount: scaleAmount(amount, share) }));
  });
}

const totalOf = (lines: readonly FoodLine[]): readonly Amount[] =>
  sumAmounts(lines.map(({ ingredient }) => ingredient.amount));

/** "four cloves of garlic and one teaspoon". */
function said(amounts: readonly Amount[], item: string): string {
  const [first, ...rest] = amounts;
  if (first === undefined) return `no ${item}`;
  return listed([spokenIngredient(first, item), ...rest.map(spokenAmount)]);
}

function answer(lines: readonly FoodLine[], scope: Scope | null, scene: Scene, kitchen: Kitchen): string {
  const item = lines[0]?.ingredient.item ?? "";
  switch (scope?.of) {
    case "step":
      return inStep(lines, item, scene, kitchen) ?? notInStep(lines, item, scene);
    case "dish":
      return inDish(lines, item, scope.dish, scene);
    case "meal":
      return inAll(lines, item);
    case "to-come":
      return toCome(lines, item, scene);
    case undefined:
      return inStep(lines, item, scene, kitchen) ?? inAll(lines, item);
  }
}

/** What the step in hand takes, with the total where that is another; null where it takes none. */
function inStep(lines: readonly FoodLine[], item: string, scene: Scene, kitchen: Kitchen): string | null {
  const task = currentTask(scene, kitchen);
  const line = lines.find(({ dish }) => dish.id === task?.dish.id);
  if (task === null || line === undefined) return null;
  const uses = task.step.uses.filter(({ ingredient }) => ingredient === line.ingredient.id);
  if (uses.length === 0) return null;
  const here = sumAmounts(uses.map(({ amount }) => amount));
  const how = line.ingredient.preparation;
  const now = `${capital(said(here, item))}${how === null ? "" : `, ${how}`}, in this step.`;
  const all = totalOf(lines);
  const total = `${capital(said(all, item))} in all.`;
  return sameAmounts(here, all) || countWords(`${now} ${total}`) > breathWords ? now : `${now} ${total}`;
}

function notInStep(lines: readonly FoodLine[], item: string, scene: Scene): string {
  const next = usesOf(lines, scene).find(({ task }) => isOpen(task, scene));
  return next === undefined
    ? `This step takes no ${item}; all of it is in.`
    : `This step takes no ${item}. ${capital(spokenAmount(next.amount))} later, for this: ${next.task.step.title}.`;
}

function inDish(lines: readonly FoodLine[], item: string, mention: Mention, scene: Scene): string {
  const hit = findDish(mention, scene.session);
  const dishes = hit.kind === "one" ? [hit.value] : hit.kind === "several" ? hit.values : [];
  const line = lines.find(({ dish }) => dishes.some(({ id }) => id === dish.id));
  if (hit.kind === "none") return `There is no ${wordsIn(mention)} in this meal. ${inAll(lines, item)}`;
  if (line === undefined)
    return `No ${item} in ${dishes.map(theDish).join(" or ")}; it goes into ${listed(lines.map(({ dish }) => theDish(dish)))}.`;
  const how = line.ingredient.preparation;
  return `${capital(said([line.ingredient.amount], item))}${how === null ? "" : `, ${how}`}, in ${theDish(line.dish)}.`;
}

/** The meal's total, and each dish's share where several use it. */
function inAll(lines: readonly FoodLine[], item: string): string {
  const [first] = lines;
  if (first === undefined) return `No ${item}.`;
  const total = said(totalOf(lines), item);
  if (lines.length === 1) {
    const how = first.ingredient.preparation;
    return `${capital(total)}${how === null ? "" : `, ${how}`}, in ${theDish(first.dish)}.`;
  }
  const shares = lines.map(
    ({ dish, ingredient }) => `${spokenAmount(ingredient.amount)} for ${theDish(dish)}`,
  );
  const full = `${capital(total)} in all: ${listed(shares)}.`;
  return countWords(full) <= breathWords
    ? full
    : `${capital(total)} in all, over ${listed(lines.map(({ dish }) => theDish(dish)))}.`;
}

/** What has not gone in yet: the uses of steps that are neither done nor skipped. */
function toCome(lines: readonly FoodLine[], item: string, scene: Scene): string {
  const open = usesOf(lines, scene).filter(({ task }) => isOpen(task, scene));
  if (open.length === 0) return `No more ${item}: all of it is in.`;
  const amount = said(sumAmounts(open.map((use) => use.amount)), item);
  const titles = [...new Set(open.map(({ task }) => task.step.title))];
  const full = `${capital(amount)} still to come, for this: ${listed(titles)}.`;
  return countWords(full) <= breathWords ? full : `${capital(amount)} still to come.`;
}

/** What goes into a step or a dish, with amounts and what is done to it before. */
export function whatGoesIn(target: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  if (target === null) {
    const task = currentTask(scene, kitchen);
    return task === null ? told("No step is in hand. Name a dish.") : ofStep(task);
  }
  const dish = findDish(target, scene.session);
  if (dish.kind === "one")
    return inParts(
      `Into ${theDish(dish.value)}:`,
      dish.value.ingredients.map((one) => listing(one.amount, one.item, one.preparation)),
    );
  const task = findTask(target, scene, kitchen, "ask");
  if (task.kind === "one") return ofStep(task.value);
  if (task.kind === "several") {
    return asksWhich(
      task.values.map(({ id, step }) => ({
        name: step.title,
        intent: { type: "WhatGoesIn", target: { by: "task", task: id } },
      })),
    );
  }
  return told(
    `There is no ${wordsIn(target)} in this meal. We have ${listed(scene.session.meal.dishes.map(theDish))}.`,
  );
}

function ofStep({ step, dish }: Task): Outcome {
  const items = step.uses.flatMap(({ ingredient, amount }) => {
    const line = dish.ingredients.find(({ id }) => id === ingredient);
    return line === undefined ? [] : [listing(amount, line.item, line.preparation)];
  });
  return items.length === 0 ? told(`Nothing new goes in: ${step.title}.`) : inParts("", items);
}

const listing = (amount: Amount, item: string, how: string | null): string =>
  `${spokenIngredient(amount, item)}${how === null ? "" : `, ${how}`}`;
