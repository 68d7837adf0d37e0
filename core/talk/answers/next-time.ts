import type { Change, Note } from "../../next-time/note.ts";
import { askNote, sayNote } from "../../next-time/say-note.ts";
import type { Dish } from "../../recipe/model.ts";
import type { FoodLine } from "../find.ts";
import { asksWhich, findDish, findFood, wordsIn } from "../find.ts";
import { currentTask, findTask } from "../find-task.ts";
import type { Intent, IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { dishNames } from "../names.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asks, ordered, told } from "../outcome.ts";
import { countWords, inParts, oneDish } from "../speech.ts";
import { withFood } from "./amounts.ts";
import { linesMeant } from "./changing.ts";

/** A longer note cannot be asked in one breath. */
const mostWords = 12;

type Asked = IntentOf<"NextTime">;

/** "Next time twice the lemon": kept in the log, and asked for when the dish is cooked again. */
export function nextTime(intent: Asked, scene: Scene, kitchen: Kitchen): Outcome {
  const { wish } = intent;
  if (wish.kind === "words") return words(wish.words, intent, scene, kitchen);
  if (wish.kind === "first") return first(wish.target, scene, kitchen);
  // "Less salt", where no recipe has any, is worth keeping all the same.
  if (wish.kind === "some" && findFood(wish.food, scene.session).kind === "none")
    return words(`${wish.words} ${wordsIn(wish.food)}`, intent, scene, kitchen);
  return withFood(
    wish.food,
    scene,
    kitchen,
    (item) => ({ ...intent, wish: { ...wish, food: { by: "food", item } } }),
    (lines) => {
      const meant = linesMeant(lines, intent.dish, scene, kitchen);
      const [line] = meant;
      if (line === undefined) return told("That does not go in there.");
      if (meant.length > 1)
        return asksWhichDish(
          meant.map(({ dish }) => dish),
          intent,
        );
      return noted(line.dish, changeOf(wish, line), scene, kitchen);
    },
  );
}

/** What cannot be reckoned (no amount, or a food to taste) is kept in words. */
function changeOf(
  wish: Exclude<Asked["wish"], { readonly kind: "words" | "first" }>,
  line: FoodLine,
): Change {
  const { id: ingredient, item, amount } = line.ingredient;
  switch (wish.kind) {
    case "times":
      return amount.kind === "measured"
        ? { kind: "times", ingredient, times: wish.times }
        : { kind: "words", words: `${wish.times === "1/2" ? "half" : "twice"} the ${item}`, ingredient };
    case "amount":
      return wish.amount === null
        ? { kind: "words", words: item, ingredient }
        : { kind: "amount", ingredient, amount: wish.amount, servings: line.dish.yield.servings };
    case "some":
      return { kind: "words", words: `${wish.words} ${item}`, ingredient };
    case "leave-out":
      return { kind: "leave-out", ingredient };
  }
}

function asksWhichDish(dishes: readonly Dish[], intent: Asked): Outcome {
  return asksWhich(
    dishes.map((dish) => ({
      name: oneDish(dish),
      intent: { ...intent, dish: { by: "dish", dish: dish.id } } satisfies Intent,
    })),
    "For which dish",
  );
}

function first(target: Mention, scene: Scene, kitchen: Kitchen): Outcome {
  const dish = findDish(target, scene.session);
  if (dish.kind === "one") return noted(dish.value, { kind: "first", step: null }, scene, kitchen);
  const task = findTask(target, scene, kitchen, "ask");
  if (task.kind === "one")
    return noted(task.value.dish, { kind: "first", step: task.value.step.id }, scene, kitchen);
  if (task.kind === "none") return told(`There is no ${wordsIn(target)} in this meal.`);
  return asksWhich(
    task.values.map(({ id, step }) => ({
      name: step.title,
      intent: { type: "NextTime", wish: { kind: "first", target: { by: "task", task: id } }, dish: null },
    })),
  );
}

/** The dish that was named, that the words name, or that is in hand; else it is asked which. */
function words(said: string, intent: Asked, scene: Scene, kitchen: Kitchen): Outcome {
  const { meal } = scene.session;
  if (countWords(said) > mostWords)
    return told("That is too long to be asked aloud. Say it in twelve words.");
  const named = intent.dish === null ? null : findDish(intent.dish, scene.session);
  const within = meal.dishes.filter((dish) =>
    dishNames(dish, meal).some((name) => ` ${said} `.includes(` ${name} `)),
  );
  const current = currentTask(scene, kitchen)?.dish;
  const dishes =
    named?.kind === "one"
      ? [named.value]
      : within.length > 0
        ? within
        : current === undefined
          ? meal.dishes
          : [current];
  const [dish] = dishes;
  return dish === undefined || dishes.length > 1
    ? asksWhichDish(dishes, intent)
    : noted(dish, { kind: "words", words: said, ingredient: null }, scene, kitchen);
}

function noted(dish: Dish, change: Change, { session }: Scene, kitchen: Kitchen): Outcome {
  const note: Note = { dish: dish.id, change, from: "asked" };
  return ordered(
    kitchen,
    [{ type: "NoteNextTime", note }],
    () => `Noted for next time: ${sayNote(note, session.meal)}.`,
  );
}

/** The next note that waits for an answer, as a question; null where none does. */
export function openNote({ session }: Pick<Scene, "session">): Outcome | null {
  const open = session.offered.find(({ state }) => state === "open");
  if (open === undefined) return null;
  const { key, note } = open;
  const intent: Intent = { type: "AnswerNote", key, answer: "applied" };
  return asks({ kind: "confirm", intent, prompt: askNote(note, session.meal) });
}

const answered = {
  applied: "Done for tonight",
  kept: "Kept for another time",
  dropped: "Dropped",
} as const;

/** A yes does it tonight, a no keeps it for another time; then the next one is asked for. */
export function answerNote({ key, answer }: IntentOf<"AnswerNote">, scene: Scene, kitchen: Kitchen): Outcome {
  const note = scene.session.offered.find((one) => one.key === key)?.note;
  let next: Outcome | null = null;
  const outcome = ordered(kitchen, [{ type: "AnswerNote", key, answer }], (then) => {
    next = openNote(then);
    // With another question behind it there is breath for no more.
    return note === undefined || next !== null
      ? `${answered[answer]}.`
      : `${answered[answer]}: ${sayNote(note, scene.session.meal)}.`;
  });
  const following = next as Outcome | null;
  if (following === null) return outcome;
  return { ...outcome, say: `${outcome.say} ${following.say}`, question: following.question };
}

/** "Drop it": the note that was just asked about is not wanted any more. */
export function dropNote(scene: Scene, kitchen: Kitchen): Outcome {
  const { question } = kitchen.dialogue;
  const asked =
    question?.kind === "confirm" && question.intent.type === "AnswerNote" ? question.intent : null;
  return asked === null
    ? told("I asked about no note.")
    : answerNote({ ...asked, answer: "dropped" }, scene, kitchen);
}

/** "What did I want to change?": the notes of the evenings before and of tonight; what is open is asked. */
export function askNotes(scene: Scene): Outcome {
  const { offered, noted: tonight, meal } = scene.session;
  const said = [
    ...offered.flatMap(({ note, state }) =>
      state === "open" || state === "dropped"
        ? []
        : `${sayNote(note, meal)}, ${state === "applied" ? "done tonight" : "kept"}`,
    ),
    ...tonight.map((note) => `${sayNote(note, meal)}, for next time`),
  ];
  const open = openNote(scene);
  if (open !== null) return open;
  return said.length === 0 ? told("Nothing is noted for these dishes.") : inParts("Noted:", said.map(lower));
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
