import { randomUUID } from "node:crypto";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { timerId } from "../../core/cook/orders.ts";
import { dishId, ingredientId } from "../../core/recipe/model.ts";
import type { MealBook } from "../../server/kitchen/meal-book.ts";
import { eventCount, OpenKitchen, timer } from "./open-kitchen.ts";

const kitchen = new OpenKitchen();

describe("devices in one kitchen", () => {
  it("[N50] a device that joins gets the whole log; two devices see the same events", async () => {
    const tablet = await kitchen.device();
    expect(tablet.session).toBeNull();
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
    await tablet.until(() => tablet.session !== null);
    const phone = await kitchen.device();
    expect(phone.log.events).toEqual(tablet.log.events);
    const answer = await phone.order(timer("flatbreads"));
    if (!answer.ok) throw new Error(answer.sentence);
    await tablet.until(() => eventCount(tablet) >= answer.seq);
    await phone.until(() => eventCount(phone) >= answer.seq);
    expect(phone.log).toEqual(tablet.log);
    expect([...(tablet.log.session?.timers.keys() ?? [])]).toEqual(["flatbreads"]);
  });

  it("[N6] one id given by two devices is carried out once", async () => {
    const [tablet, phone] = [await kitchen.device(), await kitchen.device()];
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
    const [tablet, phone] = [await kitchen.device(), await kitchen.device()];
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
    const tablet = await kitchen.device();
    for (const order of [null, {}, { type: "Nonsense" }, { type: "NoteMeal", made: {} }]) {
      const payload = { id: randomUUID(), at: Date.now(), order };
      expect(await tablet.send("house-order", payload)).toMatchObject({ ok: false });
    }
    expect(await tablet.send("house", null)).toMatchObject({ events: [] });
  });

  it("[N51] a refused order is answered with its sentence and told to nobody", async () => {
    const tablet = await kitchen.device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    const before = eventCount(tablet);
    expect(await tablet.order({ type: "StopTimer", timer: timerId("rice") })).toMatchObject({ ok: false });
    expect(await tablet.order(timer("rice"))).toEqual({ ok: true, seq: before + 1 });
  });

  it("[N4] the end of the meal frees the kitchen on every device", async () => {
    const [tablet, phone] = [await kitchen.device(), await kitchen.device()];
    await tablet.begin("welcome-supper");
    await phone.until(() => phone.session !== null);
    await phone.order({ type: "EndMeal" });
    await tablet.until(() => tablet.session === null);
    const pantry = (await (await fetch(`${kitchen.server.url}api/meals`)).json()) as {
      readonly cooking: unknown;
    };
    expect(pantry.cooking).toBeNull();
  });

  it("[M28] the start page's list tells what was noted for a meal's dishes on evenings before", async () => {
    const tablet = await kitchen.device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    const change = { kind: "leave-out", ingredient: ingredientId("cilantro") } as const;
    const note = { dish: dishId("lentil-soup"), change, from: "asked" } as const;
    expect(await tablet.order({ type: "NoteNextTime", note })).toMatchObject({ ok: true });
    await tablet.order({ type: "EndMeal" });
    const { meals } = (await (await fetch(`${kitchen.server.url}api/meals`)).json()) as ReturnType<
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
    const tablet = await kitchen.device();
    const begun = await tablet.begin("welcome-supper");
    const pantry = (await (await fetch(`${kitchen.server.url}api/meals`)).json()) as ReturnType<
      MealBook["listing"]
    >;
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

describe("a server that stops in the middle of a meal", () => {
  it("[N55] devices join again by themselves and get the whole meal, with every timer right", async () => {
    const tablet = await kitchen.device();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    await tablet.order(timer("rice"));
    const { log, session } = tablet;
    const port = Number(new URL(kitchen.server.url).port);
    await kitchen.server.close();
    await tablet.until(() => tablet.socket.disconnected);
    await kitchen.restart(port);
    await tablet.until(() => tablet.snapshots >= 3);
    expect(tablet.session).toBe(session);
    expect(tablet.log.events.slice(0, log.events.length)).toEqual(log.events);
    expect(tablet.log.session?.timers).toEqual(log.session?.timers);
    expect(await tablet.order(timer("beans"))).toMatchObject({ ok: true });
  });

  it("[N56] a second server on the same log is refused, and one on the same port too", async () => {
    await expect(kitchen.start()).rejects.toThrow(/Another Stovecall is using the meal log/);
    const port = Number(new URL(kitchen.server.url).port);
    await expect(kitchen.start(port, join(kitchen.folder, "other"))).rejects.toThrow(
      `Port ${port} is taken by another program. Name another one with --port, for instance --port ${port + 1}.`,
    );
  });
});
