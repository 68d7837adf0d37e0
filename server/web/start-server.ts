import { randomUUID } from "node:crypto";
import { createServer, type Server as HttpServer } from "node:http";
import { parseEvent } from "../../core/cook/parse.ts";
import type { Pantry } from "../../core/sync/protocol.ts";
import { instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { courseFinder } from "../course/course-finder.ts";
import { keepCourses } from "../course/keep-courses.ts";
import { Kitchen } from "../kitchen/kitchen.ts";
import type { MealBook } from "../kitchen/meal-book.ts";
import { startTicking } from "../kitchen/ticker.ts";
import { holdLog } from "../store/hold-log.ts";
import { storeSentence, type MealStore } from "../store/meal-store.ts";
import { openMealDatabase } from "../store/open-meal-database.ts";
import { SqliteMealStore } from "../store/sqlite-meal-store.ts";
import { createVoice } from "../voice/create-voice.ts";
import { voiceRouter } from "../voice/voice-router.ts";
import { createApp } from "./app.ts";
import { buyingRouter } from "./buying-router.ts";
import { calendarRouter } from "./calendar-router.ts";
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

function openStore(
  folder: string,
): Result<{ readonly store: MealStore; readonly letGo: () => void }, string> {
  const database = openMealDatabase(folder);
  if (!database.ok) return err(storeSentence(database.error));
  const hold = holdLog(folder);
  if (hold.ok) return ok({ store: new SqliteMealStore(database.value, parseEvent), letGo: hold.value });
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
  const now = () => instant(Date.now());
  const kitchen = Kitchen.open({
    store,
    meal: (id, servings) => options.book.meal(id, servings),
    now,
    newId: randomUUID,
  });
  if (!kitchen.ok) {
    letGo();
    store.close();
    return err(storeSentence(kitchen.error));
  }
  const running = join(options, kitchen.value);
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

/** Joins the kitchen to the network; nothing listens yet. */
function join(options: ServerOptions, kitchen: Kitchen) {
  const { book, pageFolder, modelsFolder } = options;
  const report = (problem: unknown) =>
    options.report(problem instanceof Error ? (problem.stack ?? problem.message) : String(problem));
  const voice = createVoice();
  // The first sentence of an evening must not wait for the voice to be loaded.
  voice.warm();
  const pantry = async (): Promise<Pantry> => ({
    ...(await book.list((meal) => kitchen.pacesFor(meal), kitchen.eaten())),
    cooking: kitchen.cooking(),
  });
  const calendar = calendarRouter(() => kitchen.evening());
  const buying = buyingRouter((id, servings) => book.meal(id, servings), options.tablesFolder);
  const voices = voiceRouter(voice);
  const app = createApp({ pantry, voice: voices, calendar, buying, pageFolder, modelsFolder, report });
  const http = createServer(app);
  const devices = attachSockets(http, kitchen, report);
  const stopTicking = startTicking(kitchen, report);
  const courses = keepCourses(kitchen, courseFinder(), report);
  const close = async (): Promise<void> => {
    stopTicking();
    await courses.close();
    await devices.close();
    await voice.close();
    http.closeAllConnections();
  };
  return { http, close };
}
