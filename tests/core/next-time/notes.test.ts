import { describe, expect, it } from "vitest";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import type { Change, Note } from "../../../core/next-time/note.ts";
import { noteKey } from "../../../core/next-time/note.ts";
import { leftBy, notesFor, remembered } from "../../../core/next-time/remember.ts";
import { askNote, sayNote } from "../../../core/next-time/say-note.ts";
import { dishId, ingredientId, stepId } from "../../../core/recipe/model.ts";
import { scaleDish } from "../../../core/recipe/scale.ts";
import { formatAmount } from "../../../core/units/amount.ts";
import type { Measured } from "../../../core/units/amount.ts";
import { amount } from "../cook/supper.ts";
import { evening, give, supper } from "../talk/supper.ts";

const figure = (text: string): Measured => amount(text) as Measured;
const lemon = ingredientId("lemon");
const stew = dishId("lantern-stew");
const breads = dishId("griddle-breads");

const note = (change: Change, more: Partial<Note> = {}): Note => ({
  dish: stew,
  change,
  from: "asked",
  ...more,
});
const twice = note({ kind: "times", ingredient: lemon, times: "2/1" });
const words = note({ kind: "words", words: "less ground cumin", ingredient: ingredientId("cumin") });
const without = note({ kind: "leave-out", ingredient: ingredientId("lentils") });
const breadsFirst: Note = { dish: breads, change: { kind: "first", step: null }, from: "asked" };

const offered = (...notes: readonly Note[]): MealLog =>
  give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null, notes });
const said = (log: MealLog, one: Note, answer: "applied" | "kept" | "dropped"): MealLog =>
  give(log, 1, { type: "AnswerNote", key: noteKey(one), answer });

const foodIn = (log: MealLog, id: string): string | undefined => {
  const dish = log.session?.meal.dishes.find((one) => one.id === stew);
  const food = dish?.ingredients.find((one) => one.id === id);
  return food === undefined ? undefined : formatAmount(food.amount);
};

describe("what is to be otherwise the next time", () => {
  it("[M20] a note is kept in the log, and undo takes it back", () => {
    const noted = give(evening(), 1, { type: "NoteNextTime", note: twice });
    expect(noted.session?.noted).toEqual([twice]);
    expect(give(noted, 2, { type: "UndoLast" }).session?.noted).toEqual([]);
    expect(leftBy(noted.events)).toEqual([{ key: "lantern-stew/lemon", note: twice }]);
  });

  it.each([
    [note({ kind: "times", ingredient: ingredientId("saffron"), times: "2/1" }), "NoSuchFood"],
    [note({ kind: "times", ingredient: lemon, times: "100/1" }), "NoAmount"],
    [note({ kind: "amount", ingredient: lemon, amount: figure("3 cloves"), servings: 4 }), "OddAmount"],
    [note({ kind: "first", step: stepId("sing") }), "NoSuchFood"],
    [note({ kind: "first", step: null }, { dish: dishId("pie") }), "NoSuchDish"],
  ])("[M21] a note about what is not there, or with an odd amount, is refused: %j", (odd, code) => {
    expect(() => give(evening(), 1, { type: "NoteNextTime", note: odd })).toThrow(code);
  });

  it("[M22] it is offered, and nothing is done without a yes", () => {
    const log = offered(twice, words, without, breadsFirst);
    expect(log.session?.offered.map(({ state }) => state)).toEqual(["open", "open", "open", "open"]);
    expect(log.session?.meal).toEqual(supper);
    for (const answer of ["kept", "dropped"] as const) {
      const then = said(log, twice, answer);
      expect(then.session?.meal).toEqual(supper);
      expect(then.session?.offered[0]?.state).toBe(answer);
    }
  });

  it("[M23] a yes changes the amount in list and steps, and undo has it as it was; never twice", () => {
    const log = said(offered(twice), twice, "applied");
    expect(foodIn(log, "lemon")).toBe("4 tablespoons");
    const use = log.session?.tasks.flatMap(({ dish, step }) =>
      dish.id === stew ? step.uses.filter(({ ingredient }) => ingredient === lemon) : [],
    );
    expect(use?.map((one) => formatAmount(one.amount))).toEqual(["4 tablespoons"]);
    expect(() => said(log, twice, "applied")).toThrow("NoSuchNote");
    const undone = give(log, 2, { type: "UndoLast" });
    expect([foodIn(undone, "lemon"), undone.session?.offered[0]?.state]).toEqual(["2 tablespoons", "open"]);
  });

  it("[M23] left out: the food is in no list and no step, and the step that took it says so", () => {
    const log = said(offered(without), without, "applied");
    expect(foodIn(log, "lentils")).toBeUndefined();
    const simmer = log.session?.tasks.find(({ id }) => id === "lantern-stew/simmer")?.step;
    expect(simmer?.uses.map(({ ingredient }) => ingredient)).not.toContain("lentils");
    expect(simmer?.do).toBe("simmer the lentils. Leave out the red lentils.");
  });

  it("[M23] first: the dish's next step is wished for, and called where it may begin; words stand at their step", () => {
    const log = said(offered(breadsFirst), breadsFirst, "applied");
    expect(log.session?.wishes[0]).toBe("griddle-breads/mix");
    expect(log.session?.focus?.task).toBe("griddle-breads/mix");
    const noted = said(offered(words), words, "applied").session?.tasks.find(
      ({ id }) => id === "lantern-stew/simmer",
    );
    expect(noted?.step.do).toBe("simmer the lentils. Noted: less ground cumin.");
  });

  it("[M24] answered before the meal begins, it is applied in the log's first command", () => {
    const log = give(emptyLog, 0, {
      type: "BeginMeal",
      meal: supper,
      serveAt: null,
      notes: [twice, breadsFirst],
      noteAnswers: [
        { key: noteKey(twice), answer: "applied" },
        { key: noteKey(breadsFirst), answer: "applied" },
      ],
    });
    expect(foodIn(log, "lemon")).toBe("4 tablespoons");
    expect(log.session?.focus?.task).toBe("griddle-breads/mix");
    expect(new Set(log.events.map(({ command }) => command)).size).toBe(1);
    expect(appendEvents(emptyLog, log.events).session).toEqual(log.session);
    for (const event of log.events)
      expect(parseEvent(JSON.parse(JSON.stringify(event)))).toEqual({ ok: true, value: event });
  });

  it("[M25] an amount changed during an evening is offered too, for tonight's servings; as the recipe has it, not", () => {
    const change = { dish: stew, ingredient: lemon, step: null };
    const three = give(evening(), 1, { type: "ChangeAmount", ...change, amount: figure("3 tbsp") });
    const notes = remembered([leftBy(three.events)]);
    expect(notes.map((one) => askNote(one, supper))).toEqual([
      "Last time you took three tablespoons of lemon juice in the stew. Again?",
    ]);
    const forTwo = { ...supper, dishes: supper.dishes.map((dish) => scaleDish(dish, 2)) };
    expect(notes.map((one) => sayNote(one, forTwo))).toEqual([
      "one and a half tablespoons of lemon juice in the stew",
    ]);
    const log = give(emptyLog, 0, { type: "BeginMeal", meal: forTwo, serveAt: null, notes });
    expect(
      foodIn(give(log, 1, { type: "AnswerNote", key: "lantern-stew/lemon", answer: "applied" }), "lemon"),
    ).toBe("1 1/2 tablespoons");
    const back = give(three, 2, { type: "ChangeAmount", ...change, amount: figure("2 tbsp") });
    expect(notesFor(supper, remembered([leftBy(back.events)]))).toEqual([]);
    // What stood in for the food is another food: its amount is no note.
    const lime = give(evening(), 1, { type: "UseSwap", dish: stew, ingredient: lemon, swap: 0 });
    expect(
      leftBy(give(lime, 2, { type: "ChangeAmount", ...change, amount: figure("3 tbsp") }).events),
    ).toEqual([]);
    const undone = give(three, 2, { type: "UndoLast" });
    expect(leftBy(undone.events)).toEqual([]);
  });

  it("[M26] the later note about the same thing counts; kept and applied ones come again, dropped ones do not", () => {
    const half = note({ kind: "times", ingredient: lemon, times: "1/2" });
    const first = leftBy(give(evening(), 1, { type: "NoteNextTime", note: twice }).events);
    const second = leftBy(give(evening(), 1, { type: "NoteNextTime", note: half }).events);
    expect(remembered([first, second])).toEqual([half]);
    for (const answer of ["applied", "kept"] as const)
      expect(remembered([first, leftBy(said(offered(twice), twice, answer).events)])).toEqual([twice]);
    expect(remembered([first, leftBy(said(offered(twice), twice, "dropped").events)])).toEqual([]);
  });

  it("[M26] a note about what the recipe has no more is not offered, and one of another dish neither", () => {
    const gone = note({ kind: "leave-out", ingredient: ingredientId("raisins") });
    const other = note({ kind: "first", step: null }, { dish: dishId("pie") });
    expect(notesFor(supper, [gone, other, twice, words])).toEqual([words, twice]);
  });

  it("[M27] notes pass the edge as they are, and nonsense does not", () => {
    const order = { type: "NoteNextTime", note: twice };
    expect(parseOrder(order)).toEqual({ ok: true, value: order });
    for (const times of ["0/1", "-2/1", "2/0", "twice"])
      expect(parseOrder({ ...order, note: { ...twice, change: { ...twice.change, times } } }).ok).toBe(false);
    expect(parseOrder({ type: "AnswerNote", key: "k", answer: "perhaps" }).ok).toBe(false);
  });
});
