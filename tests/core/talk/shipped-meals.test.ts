import { describe, expect, it } from "vitest";
import { callsNow } from "../../../core/cook/calls-now.ts";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { explainPlan } from "../../../core/talk/explain-plan.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { phrasebook } from "../../../core/talk/phrasebook.ts";
import { respond } from "../../../core/talk/respond.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { understand } from "../../../core/talk/understand.ts";
import { toAutomaton } from "../../../core/speech/automaton.ts";
import { listenTo } from "../../voice/grammars.ts";
import { shippedPantry } from "../recipe/shelf.ts";
import { at } from "./supper.ts";

const { meals, dishes } = await shippedPantry();

function mealOf(index: number): CookingMeal {
  const meal = meals[index];
  if (meal === undefined) throw new Error(`no meal ${index}`);
  const cooking = cookingMeal(meal, dishes);
  if (!cooking.ok) throw new Error(cooking.error);
  return cooking.value;
}

interface Evening {
  readonly log: MealLog;
  readonly kitchen: Kitchen;
  readonly minute: number;
}

/** The meal cooked to its end by nothing but "done" and "it's in"; every minute's kitchen on the way. */
function cooked(meal: CookingMeal): readonly Evening[] {
  const course: Evening[] = [];
  let log = give(emptyLog, 0, "begin", { type: "BeginMeal", meal, serveAt: null });
  for (let minute = 0; minute < 600; minute += 0.5) {
    log = give(log, minute, `tick${minute}`, { type: "Tick" });
    const { session } = log;
    if (session === null) throw new Error("the meal is gone");
    const sheet = runSheetOf(session, at(minute));
    const kitchen = {
      log,
      sheet,
      now: at(minute),
      utcOffsetMinutes: () => 0,
      dialogue: silentDialogue,
      utteranceId: `u${minute}`,
      explain: explainPlan,
      household: null,
      foods: null,
    };
    course.push({ log, kitchen, minute });
    const [call] = callsNow(session, sheet, at(minute));
    if (call?.kind === "serve") return course;
    if (call === undefined || call.kind === "wait") continue;
    const isYoung = call.kind === "do" && at(minute) - call.since < call.task.step.time.low * 1000;
    if (isYoung) continue;
    const reply = respond(call.kind === "put-on" ? "it's in" : "done", kitchen);
    for (const [index, order] of reply.orders.entries())
      log = give(log, minute, `${kitchen.utteranceId}-${index}`, order);
  }
  throw new Error(`${meal.name} never came to the table`);
}

function give(
  log: MealLog,
  minute: number,
  id: string,
  order: Parameters<typeof decide>[0]["order"],
): MealLog {
  const command = { id, at: at(minute), order };
  const decision = decide(command, log);
  if (!decision.ok) throw new Error(`${order.type} is refused at minute ${minute}: ${decision.error.code}`);
  return appendEvents(log, numbered(command, log, decision.value));
}

/** Every example question, about each dish and food of the meal where it names one. */
function questionsOf(meal: CookingMeal): readonly string[] {
  const general = phrasebook.flatMap(({ topic, example, intent }) =>
    topic === "asking" &&
    example !== null &&
    intent !== "WhereWasI" &&
    !/garlic|slaw|squash|flatbreads|lime/.test(example)
      ? [example]
      : [],
  );
  const names = meal.dishes.map((dish) => dish.says[0] ?? dish.name);
  const items = [...new Set(meal.dishes.flatMap((dish) => dish.ingredients.map(({ item }) => item)))];
  return [
    ...general,
    ...names.flatMap((name) => [
      `what is left for the ${name}`,
      `what goes into the ${name}`,
      `how long for the ${name}`,
    ]),
    ...items.flatMap((item) => [
      `how much ${item}`,
      `how much ${item} in all`,
      `how much ${item} do i still need`,
      `what can i use instead of ${item}`,
    ]),
  ];
}

describe.each(meals.map(({ name }, index) => ({ name, index })))("$name", ({ index }) => {
  const meal = mealOf(index);
  const course = cooked(meal);

  it("[C20] is cooked to the table by 'done' and 'it's in' alone", () => {
    const session = course.at(-1)?.log.session;
    const states = [...(session?.progress.values() ?? [])].map(({ state }) => state);
    expect(new Set(states)).toEqual(new Set(["done"]));
  });

  it("[C90] is asked about at many moments, and answered in one breath each time", () => {
    const questions = questionsOf(meal);
    const moments = course.filter((_, at_) => at_ % Math.ceil(course.length / 6) === 0);
    for (const { kitchen } of moments) {
      for (const question of questions) {
        const { say, intent } = respond(question, kitchen);
        expect([question, intent === null]).toEqual([question, false]);
        expect([question, say, countWords(say) <= breathWords]).toEqual([question, say, true]);
      }
    }
  });

  it("[C2] every name in it can be said in every place where names stand", () => {
    const kitchen = course[0]?.kitchen;
    if (kitchen === undefined) throw new Error("no course");
    const { rules } = grammarFor(kitchen);
    const said = (rule: string): readonly string[] => {
      const phrase = rules.get(rule);
      return phrase?.kind === "choice"
        ? phrase.of.flatMap((one) => (one.kind === "words" ? [one.text] : []))
        : [];
    };
    for (const target of said("target")) {
      expect([target, understand(`done with the ${target}`, kitchen).intent]).toEqual([
        target,
        { type: "Done", target: { by: "words", words: target } },
      ]);
    }
    for (const food of said("food")) {
      expect([food, understand(`how much ${food}`, kitchen).intent]).toEqual([
        food,
        { type: "HowMuch", food: { by: "words", words: food }, scope: null },
      ]);
    }
    expect(
      toAutomaton(listenTo(grammarFor(kitchen), { address: "listen kitchen", mode: "addressed" })).ok,
    ).toBe(true);
  });
});
