import { randomUUID } from "node:crypto";
import { createServer, type Server as HttpServer } from "node:http";
import { parseEvent } from "../../core/cook/parse.ts";
import { parseHouseEvent } from "../../core/house/parse.ts";
import { noteKey } from "../../core/next-time/note.ts";
import { askNote } from "../../core/next-time/say-note.ts";
import type { MealCard, Pantry } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { courseFinder } from "../course/course-finder.ts";
import { keepCourses } from "../course/keep-courses.ts";
import { Household } from "../kitchen/household.ts";
import { Kitchen } from "../kitchen/kitchen.ts";
import type { MealBook } from "../kitchen/meal-book.ts";
import { noteMeals } from "../kitchen/note-meals.ts";
import { startTicking } from "../kitchen/ticker.ts";
import { holdLog } from "../store/hold-log.ts";
import { storeSentence, type MealStore, type StoreFailure } from "../store/meal-store.ts";
import { openMealDatabase } from "../store/open-meal-database.ts";
import type { HouseStore } from "../store/house-store.ts";
import { SqliteHouseStore } from "../store/sqlite-house-store.ts";
import { SqliteMealStore } from "../store/sqlite-meal-store.ts";
import { createVoice } from "../voice/create-voice.ts";
import { voiceRouter } from "../voice/voice-router.ts";
import { createApp } from "./app.ts";
import { buyingRouter } from "./buying-router.ts";
import { calendarRouter } from "./calendar-router.ts";
import type { FindMeal } from "./find-meal.ts";
import { foodsRouter } from "./foods-router.ts";
import { mealRouter } from "./meal-router.ts";
import { attachSockets } from "./sockets.ts";

export interface ServerOptions {
  /** 0: any free one. */
  readonly port: number;
  /** Where the meal log lives. */
  readonly dataFolder: string;
  readonly book: MealBook;
  readonly pageFolder: string;
  readonly modelsFolder: string;
  /** Has the tables of foods and places in foods/. */
  readonly tablesFolder: string;
  /** Is told one sentence, or the trace of a bug of ours. */
  readonly report: (problem: string) => void;
}

export interface RunningServer {
  /** Where the page is, with a slash at the end. */
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** This machine and no other: whoever can reach the address may give orders. */
const address = "127.0.0.1";

interface Stores {
  readonly store: MealStore;
  readonly houseStore: HouseStore;
  readonly letGo: () => void;
}

function openStore(folder: string): Result<Stores, string> {
  const database = openMealDatabase(folder);
  if (!database.ok) return err(storeSentence(database.error));
  const hold = holdLog(folder);
  if (hold.ok) {
    const store = new SqliteMealStore(database.value, parseEvent);
    const houseStore = new SqliteHouseStore(database.value, parseHouseEvent);
    return ok({ store, houseStore, letGo: hold.value });
  }
  database.value.close();
  return err(storeSentence(hold.error));
}

function listen(http: HttpServer, port: number): Promise<Result<number, string>> {
  return new Promise((resolve) => {
    http.once("error", (problem: NodeJS.ErrnoException) => {
      const taken = problem.code === "EADDRINUSE";
      const other = `Name another one with --port, for instance --port ${port + 1}.`;
      resolve(
        err(
          taken
            ? `Port ${port} is taken by another program. ${other}`
            : `Port ${port} cannot be used (${problem.message}). ${other}`,
        ),
      );
    });
    http.listen(port, address, () => {
      const bound = http.address();
      resolve(ok(typeof bound === "object" && bound !== null ? bound.port : port));
    });
  });
}

/** Opens the meal log, takes up the evening that was being cooked, and listens. Error: one sentence. */
export async function startServer(options: ServerOptions): Promise<Result<RunningServer, string>> {
  const opened = openStore(options.dataFolder);
  if (!opened.ok) return opened;
  const { store, letGo } = opened.value;
  const rooms = openRooms(opened.value, options.book);
  if (!rooms.ok) {
    letGo();
    store.close();
    return err(storeSentence(rooms.error));
  }
  const running = join(options, rooms.value, store);
  const port = await listen(running.http, options.port);
  const close = async (): Promise<void> => {
    await running.close();
    letGo();
    store.close();
  };
  if (port.ok) return ok({ url: `http://${address}:${port.value}/`, close });
  await close();
  return port;
}

interface Rooms {
  readonly kitchen: Kitchen;
  readonly household: Household;
}

/** Takes up the evening and the house as their logs have them. */
function openRooms({ store, houseStore }: Stores, book: MealBook): Result<Rooms, StoreFailure> {
  const now = () => instant(Date.now());
  const kitchen = Kitchen.open({
    store,
    meal: (id, servings) => book.meal(id, servings),
    now,
    newId: randomUUID,
  });
  if (!kitchen.ok) return kitchen;
  const household = Household.open({ store: houseStore, now, newId: randomUUID });
  return household.ok ? ok({ kitchen: kitchen.value, household: household.value }) : household;
}

/** A card with what was noted for its dishes on the evenings before. */
function withNotes(card: MealCard, book: MealBook, kitchen: Kitchen): MealCard {
  const meal = book.meal(card.id, {});
  const notes = meal.ok ? kitchen.notesFor(meal.value) : [];
  if (!meal.ok || notes.length === 0) return card;
  return { ...card, notes: notes.map((note) => ({ key: noteKey(note), ask: askNote(note, meal.value) })) };
}

/** What the page asks for beside the evening itself. */
function tellingRouters({ book, tablesFolder }: ServerOptions, { kitchen, household }: Rooms) {
  const find: FindMeal = (wanted) => book.wanted(wanted);
  return {
    calendar: calendarRouter(() => kitchen.evening()),
    buying: buyingRouter({ find, folder: tablesFolder, house: () => household.house() }),
    meal: mealRouter(find),
    foods: foodsRouter(() => book.foodBook(kitchen.eaten())),
  };
}

/** Joins the kitchen and the house to the network; nothing listens yet. */
function join(options: ServerOptions, { kitchen, household }: Rooms, store: MealStore) {
  const { book, pageFolder, modelsFolder } = options;
  const report = (problem: unknown) =>
    options.report(problem instanceof Error ? (problem.stack ?? problem.message) : String(problem));
  const voice = createVoice();
  // The first sentence of an evening must not wait for the voice to be loaded.
  voice.warm();
  const pantry = async (): Promise<Pantry> => {
    const { meals, mistakes } = await book.list((meal) => kitchen.pacesFor(meal), kitchen.eaten());
    return {
      meals: meals.map((card) => withNotes(card, book, kitchen)),
      mistakes,
      cooking: kitchen.cooking(),
    };
  };
  const routers = { ...tellingRouters(options, { kitchen, household }), voice: voiceRouter(voice) };
  const app = createApp({ pantry, ...routers, pageFolder, modelsFolder, report });
  const http = createServer(app);
  const devices = attachSockets(http, { kitchen, household }, report);
  const stopNoting = noteMeals({ kitchen, household, store, foods: book.foods(), report });
  const stopTicking = startTicking(kitchen, report);
  const courses = keepCourses(kitchen, courseFinder(), report);
  const close = async (): Promise<void> => {
    stopTicking();
    stopNoting();
    await courses.close();
    await devices.close();
    await voice.close();
    http.closeAllConnections();
  };
  return { http, close };
}
