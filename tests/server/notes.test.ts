import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { appendEvents, emptyLog } from "../../core/cook/fold.ts";
import { parseEvent } from "../../core/cook/parse.ts";
import type { Note } from "../../core/next-time/note.ts";
import { noteKey } from "../../core/next-time/note.ts";
import { dishId, ingredientId } from "../../core/recipe/model.ts";
import { beginMessage, type Snapshot } from "../../core/sync/protocol.ts";
import { ratio } from "../../core/units/rational.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteMealStore } from "../../server/store/sqlite-meal-store.ts";
import { CookedEvenings } from "./cooked-evenings.ts";

let folder = "";
let store: SqliteMealStore;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "notes-"));
  const database = openMealDatabase(folder);
  if (!database.ok) throw new Error(database.error.code);
  store = new SqliteMealStore(database.value, parseEvent);
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const leeks = { dish: dishId("leek-soup"), ingredient: ingredientId("leeks") };
const twice: Note = {
  dish: leeks.dish,
  change: { kind: "times", ingredient: leeks.ingredient, times: "2/1" },
  from: "asked",
};
const three = { kind: "measured", low: ratio(3), high: ratio(3), unit: "piece" } as const;

const sessionOf = ({ events }: Snapshot) => appendEvents(emptyLog, events).session;
const offeredIn = (snapshot: Snapshot) =>
  sessionOf(snapshot)?.offered.map(({ note, state }) => [note.from, state]);

describe("notes for the next time", () => {
  it("[M28] come with the next meal that has their dish, until they are dropped, and change nothing by themselves", () => {
    const evenings = new CookedEvenings(store);
    evenings.cook(0, 5, { type: "NoteNextTime", note: twice });
    const next = evenings.begin(7);
    expect(offeredIn(next)).toEqual([["asked", "open"]]);
    expect(sessionOf(next)?.meal.dishes[0]?.ingredients[0]?.amount).toMatchObject({ high: "2/1" });
    evenings.give({ type: "AnswerNote", key: noteKey(twice), answer: "kept" });
    evenings.give({ type: "EndMeal" });
    expect(offeredIn(evenings.begin(14))).toEqual([["asked", "open"]]);
    evenings.give({ type: "AnswerNote", key: noteKey(twice), answer: "dropped" });
    evenings.give({ type: "EndMeal" });
    expect(offeredIn(evenings.begin(21))).toEqual([]);
  });

  it("[M28] so do amounts that were changed, and not those that were undone", () => {
    const evenings = new CookedEvenings(store);
    const changed = { type: "ChangeAmount", ...leeks, step: null, amount: three } as const;
    evenings.begin(0);
    evenings.give(changed);
    evenings.give({ type: "UndoLast" });
    evenings.give({ type: "EndMeal" });
    expect(offeredIn(evenings.begin(1))).toEqual([]);
    evenings.give(changed);
    evenings.give({ type: "EndMeal" });
    expect(offeredIn(evenings.begin(2))).toEqual([["used", "open"]]);
  });

  it("[M24] what was answered before the meal begins stands in the log from its beginning", () => {
    const evenings = new CookedEvenings(store);
    evenings.cook(0, 5, { type: "NoteNextTime", note: twice });
    const begin = { id: "answered", meal: "small-meal", servings: {}, serveAt: null } as const;
    const notes = { [noteKey(twice)]: "applied", "no such note": "dropped" } as const;
    expect(beginMessage.safeParse({ ...begin, notes }).success).toBe(true);
    expect(beginMessage.safeParse({ ...begin, notes: { a: "perhaps" } }).success).toBe(false);
    expect(evenings.kitchen.begin({ ...begin, notes }).ok).toBe(true);
    const snapshot = evenings.kitchen.snapshot();
    expect(offeredIn(snapshot)).toEqual([["asked", "applied"]]);
    expect(sessionOf(snapshot)?.meal.dishes[0]?.ingredients[0]?.amount).toMatchObject({ high: "4/1" });
  });
});
