import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { get } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { timerId, type Order } from "../../core/cook/orders.ts";
import { dishId, ingredientId } from "../../core/recipe/model.ts";
import { minutes } from "../../core/units/quantity.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { startServer, type RunningServer } from "../../server/web/start-server.ts";
import { Device } from "./device.ts";

const recipes = join(import.meta.dirname, "..", "..", "recipes");
const book = await MealBook.open(recipes);
const reports: string[] = [];
let folder = "";
let server: RunningServer;
let devices: Device[] = [];

async function start(port = 0): Promise<RunningServer> {
  const started = await startServer({
    port,
    dataFolder: folder,
    book,
    pageFolder: join(folder, "no-page"),
    modelsFolder: join(folder, "no-models"),
    tablesFolder: "recipes",
    report: (problem) => reports.push(problem),
  });
  if (!started.ok) throw new Error(started.error);
  return started.value;
}

async function device(
  ...options: ConstructorParameters<typeof Device> extends [string, ...infer Rest] ? Rest : never
): Promise<Device> {
  const made = new Device(server.url, ...options);
  devices.push(made);
  await made.joined();
  return made;
}

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  server = await start();
});

afterEach(async () => {
  for (const { socket } of devices) socket.close();
  devices = [];
  await server.close();
  rmSync(folder, { recursive: true, force: true });
  expect(reports.splice(0)).toEqual([]);
});

function statusOf(path: string, headers: Record<string, string>): Promise<number> {
  return new Promise((resolve, reject) => {
    const request = get(server.url + path, { headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    request.on("upgrade", (response) => resolve(response.statusCode ?? 0)).on("error", reject);
  });
}

const timer = (id: string): Order => ({
  type: "StartTimer",
  timer: timerId(id),
  name: id,
  span: { low: minutes(12), high: minutes(12) },
  dish: null,
});

const eventCount = (of: Device): number => of.log.events.length;

describe("devices in one kitchen", () => {
  it("[N50] a device that joins gets the whole log; two devices see the same events", async () => {
    const tablet = await device();
    expect(tablet.session).toBeNull();
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
    await tablet.until(() => tablet.session !== null);
    const phone = await device();
    expect(phone.log.events).toEqual(tablet.log.events);
    const answer = await phone.order(timer("flatbreads"));
    if (!answer.ok) throw new Error(answer.sentence);
    await tablet.until(() => eventCount(tablet) >= answer.seq);
    await phone.until(() => eventCount(phone) >= answer.seq);
    expect(phone.log).toEqual(tablet.log);
    expect([...(tablet.log.session?.timers.keys() ?? [])]).toEqual(["flatbreads"]);
  });

  it("[N6] one id given by two devices is carried out once", async () => {
    const [tablet, phone] = [await device(), await device()];
    await tablet.begin("welcome-supper");
    await phone.until(() => phone.session !== null);
    const id = randomUUID();
    const answers = await Promise.all([tablet.order(timer("rice"), id), phone.order(timer("rice"), id)]);
    expect(answers[0]).toEqual(answers[1]);
    const again = await tablet.order(timer("rice"), id);
    expect(again).toEqual(answers[0]);
    expect(tablet.log.events.filter(({ command }) => command === id)).toHaveLength(1);
  });

  it("[N113] a device that joins asks for the house and gets it; every device is told what happens in it", async () => {
    const [tablet, phone] = [await device(), await device()];
    const order = {
      type: "StoreLeftover",
      id: "pie",
      dish: null,
      name: "pie",
      rest: { kind: "words", words: "half" },
      place: "fridge",
    };
    const told = new Promise((resolve) => phone.socket.once("house-events", resolve));
    const stored = await tablet.send("house-order", { id: randomUUID(), at: Date.now(), order });
    expect(stored).toEqual({ ok: true, seq: 1 });
    expect(await told).toMatchObject({ events: [{ seq: 1, happening: { type: "LeftoverStored" } }] });
    expect(await phone.send("house", null)).toMatchObject({ events: [{ seq: 1 }] });
  });

  it("[N113] garbage, and a note of a meal that a device sends, are answered with a sentence", async () => {
    const tablet = await device();
    for (const order of [null, {}, { type: "Nonsense" }, { type: "NoteMeal", made: {} }]) {
      const payload = { id: randomUUID(), at: Date.now(), order };
      expect(await tablet.send("house-order", payload)).toMatchObject({ ok: false });
    }
    expect(await tablet.send("house", null)).toMatchObject({ events: [] });
  });

  it("[N51] a refused order is answered with its sentence and told to nobody", async () => {
    const tablet = await device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    const before = eventCount(tablet);
    expect(await tablet.order({ type: "StopTimer", timer: timerId("rice") })).toMatchObject({ ok: false });
    expect(await tablet.order(timer("rice"))).toEqual({ ok: true, seq: before + 1 });
  });

  it("[N4] the end of the meal frees the kitchen on every device", async () => {
    const [tablet, phone] = [await device(), await device()];
    await tablet.begin("welcome-supper");
    await phone.until(() => phone.session !== null);
    await phone.order({ type: "EndMeal" });
    await tablet.until(() => tablet.session === null);
    const pantry = (await (await fetch(`${server.url}api/meals`)).json()) as { readonly cooking: unknown };
    expect(pantry.cooking).toBeNull();
  });

  it("[M28] the start page's list tells what was noted for a meal's dishes on evenings before", async () => {
    const tablet = await device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    const change = { kind: "leave-out", ingredient: ingredientId("cilantro") } as const;
    const note = { dish: dishId("lentil-soup"), change, from: "asked" } as const;
    expect(await tablet.order({ type: "NoteNextTime", note })).toMatchObject({ ok: true });
    await tablet.order({ type: "EndMeal" });
    const { meals } = (await (await fetch(`${server.url}api/meals`)).json()) as ReturnType<
      MealBook["listing"]
    >;
    expect(meals.flatMap(({ id, notes }) => (notes === undefined ? [] : [[id, notes]]))).toEqual([
      [
        "welcome-supper",
        [
          {
            key: "lentil-soup/cilantro",
            ask: "You noted for this time: the soup without the cilantro. Do that tonight?",
          },
        ],
      ],
    ]);
  });

  it("[N52] the start page's list tells each meal, how long it takes and what is being cooked", async () => {
    const tablet = await device();
    const begun = await tablet.begin("welcome-supper");
    const pantry = (await (await fetch(`${server.url}api/meals`)).json()) as ReturnType<MealBook["listing"]>;
    const supper = pantry.meals.find(({ id }) => id === "welcome-supper");
    expect(pantry).toMatchObject({
      mistakes: [],
      cooking: { session: begun.ok ? begun.session : "", meal: "welcome-supper" },
    });
    expect(supper).toMatchObject({ name: "Welcome Supper", serveAt: 18 * 60 + 30 });
    expect(supper?.dishes.length).toBeGreaterThanOrEqual(4);
    expect(supper?.takesMinutes).toBeGreaterThan(30);
    expect(supper?.takesMinutes).toBeLessThan(240);
  });
});

describe("what a device may not do", () => {
  it("[N21] a foreign page gets no socket, by either way in", async () => {
    for (const transports of [["websocket"], ["polling"]]) {
      const extraHeaders = { origin: "https://evil.example" };
      const stranger = new Device(server.url, { extraHeaders, transports, reconnection: false });
      devices.push(stranger);
      await stranger.until(() => stranger.refusals > 0 || stranger.snapshots > 0);
      expect([stranger.refusals, stranger.snapshots]).toEqual([1, 0]);
    }
  });

  it("[N21] whoever calls this machine by a foreign name gets no socket, by either way in", async () => {
    // Client libraries mend the Host header, so this goes out by hand. Source of the upgrade's form: RFC 6455, section 4.1.
    const upgrade = {
      connection: "Upgrade",
      upgrade: "websocket",
      "sec-websocket-version": "13",
      "sec-websocket-key": "AAAAAAAAAAAAAAAAAAAAAA==",
    };
    const answers = await Promise.all(
      [{}, upgrade].map((headers) => {
        const transport = "upgrade" in headers ? "websocket" : "polling";
        return statusOf(`socket.io/?EIO=4&transport=${transport}`, { ...headers, host: "evil.example" });
      }),
    );
    expect(answers.every((status) => status >= 400)).toBe(true);
    expect(await statusOf("socket.io/?EIO=4&transport=polling", {})).toBe(200);
  });

  it.each([
    ["nothing", undefined],
    ["a word", "done"],
    ["a list", [1, 2, 3]],
    ["an order without a session", { id: "a", at: 0, order: { type: "Tick" } }],
    ["an order of no known type", { session: "s", id: "a", at: 0, order: { type: "Flambé" } }],
    [
      "a timer of words",
      { session: "s", id: "a", at: 0, order: { type: "StartTimer", timer: {}, span: "long" } },
    ],
    ["a moment that is no number", { session: "s", id: "a", at: "now", order: { type: "Tick" } }],
    [
      "a meal of its own",
      { session: "s", id: "a", at: 0, order: { type: "BeginMeal", meal: {}, serveAt: null } },
    ],
    ["an id without end", { session: "s", id: "a".repeat(1000), at: 0, order: { type: "Tick" } }],
    ["more than was asked for", { session: "s", id: "a", at: 0, order: { type: "Tick" }, admin: true }],
  ])("[N53] %s is answered with a sentence, and the line stays open", async (_name, payload) => {
    const tablet = await device();
    for (const event of ["order", "begin"]) {
      const answer = await tablet.send(event, payload);
      expect(answer.ok ? "" : answer.sentence).toMatch(/^[A-Z].*\.$/);
    }
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
  });

  it("[N53] words without an acknowledgement and unknown words do no harm", async () => {
    const tablet = await device();
    tablet.socket.emit("order");
    tablet.socket.emit("begin", null, "no function");
    tablet.socket.emit("__proto__", {});
    tablet.socket.emit("shutdown", {});
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
  });

  it("[N54] a message of more than 64 kB closes the line and reaches nothing", async () => {
    const tablet = await device({ reconnection: false, transports: ["websocket"] });
    const phone = await device();
    tablet.socket.emit("begin", {
      id: "b".repeat(70_000),
      meal: "welcome-supper",
      servings: {},
      serveAt: null,
    });
    await tablet.until(() => tablet.socket.disconnected);
    expect(await phone.begin("welcome-supper")).toMatchObject({ ok: true });
  });

  it("[N22] the twenty-first command of a second is refused, another device is not held back", async () => {
    const [stuck, phone] = [await device(), await device()];
    await phone.begin("welcome-supper");
    await stuck.until(() => stuck.session !== null);
    const answers = await Promise.all(Array.from({ length: 30 }, () => stuck.order({ type: "Tick" })));
    const refused = answers.flatMap((answer) => (answer.ok ? [] : [answer.sentence]));
    expect(new Set(refused)).toEqual(
      new Set(["Too many commands at once; this one was not recorded. Wait a second, then say it again."]),
    );
    expect(refused.length).toBeGreaterThanOrEqual(10);
    expect(await phone.order(timer("rice"))).toMatchObject({ ok: true });
  });
});

describe("a server that stops in the middle of a meal", () => {
  it("[N55] devices join again by themselves and get the whole meal, with every timer right", async () => {
    const tablet = await device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    await tablet.order(timer("rice"));
    const { log, session } = tablet;
    const port = Number(new URL(server.url).port);
    await server.close();
    await tablet.until(() => tablet.socket.disconnected);
    server = await start(port);
    await tablet.until(() => tablet.snapshots >= 3);
    expect(tablet.session).toBe(session);
    expect(tablet.log.events.slice(0, log.events.length)).toEqual(log.events);
    expect(tablet.log.session?.timers).toEqual(log.session?.timers);
    expect(await tablet.order(timer("beans"))).toMatchObject({ ok: true });
  });

  it("[N56] a second server on the same log is refused, and one on the same port too", async () => {
    await expect(start()).rejects.toThrow(/Another Stovecall is using the meal log/);
    const other = { port: Number(new URL(server.url).port), dataFolder: join(folder, "other") };
    const refused = await startServer({
      ...other,
      book,
      pageFolder: folder,
      modelsFolder: folder,
      tablesFolder: "recipes",
      report: () => undefined,
    });
    expect(refused).toEqual({
      ok: false,
      error: `Port ${other.port} is taken by another program. Name another one with --port, for instance --port ${other.port + 1}.`,
    });
  });
});
