import { createServer, get, type IncomingHttpHeaders, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express, { Router } from "express";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { minutes, plus } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { createApp } from "../../server/web/app.ts";
import { calendarRouter } from "../../server/web/calendar-router.ts";
import { five, smallMeal } from "./small-meal.ts";

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
}

let server: Server;
let kitchen: Kitchen;
let reports: unknown[] = [];

function ask(headers: Record<string, string> = {}): Promise<Answer> {
  const { port } = server.address() as AddressInfo;
  return new Promise((resolve, reject) => {
    get({ host: "127.0.0.1", port, path: "/api/calendar", headers }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          text: Buffer.concat(parts).toString(),
        }),
      );
    }).on("error", reject);
  });
}

const light = () =>
  kitchen.begin({ id: "begin-1", meal: "small-meal", servings: {}, serveAt: plus(five, minutes(60)) });

beforeEach(async () => {
  reports = [];
  let ids = 0;
  const opened = Kitchen.open({
    store: new MemoryMealStore(),
    meal: () => ok(smallMeal),
    now: () => five,
    newId: () => `id-${(ids += 1)}`,
  });
  if (!opened.ok) throw new Error(opened.error.code);
  kitchen = opened.value;
  const app = createApp({
    pantry: () => Promise.resolve({ meals: [], mistakes: [], cooking: null }),
    voice: Router(),
    calendar: calendarRouter(() => kitchen.evening()),
    buying: Router(),
    meal: Router(),
    foods: Router(),
    pageFolder: "/nowhere",
    modelsFolder: "/nowhere",
    report: (problem) => reports.push(problem),
  });
  server = createServer(express().use(app));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
});
afterEach(async () => {
  await new Promise((resolve) => server.close(resolve));
  expect(reports).toEqual([]);
});

describe("the calendar file of the meal being cooked", () => {
  it("[P59] comes as a file of its own kind, named after the meal, and is not kept", async () => {
    light();
    const { status, headers, text } = await ask();
    expect([
      status,
      headers["content-type"],
      headers["content-disposition"],
      headers["cache-control"],
    ]).toEqual([200, "text/calendar; charset=utf-8", "attachment; filename=small-meal.ics", "no-store"]);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(text.startsWith("BEGIN:VCALENDAR\r\n")).toBe(true);
    expect(text).toContain("SUMMARY:Leek soup: simmer the soup\r\n");
    // Six in the evening of the invented day, as asked.
    expect(text).toContain("UID:small-meal.serve@id-1.stovecall\r\n");
    expect(text).toContain("DTSTART:20310504T180000Z\r\n");
  });

  it("[P59] is not there while the kitchen is free", async () => {
    const { status, text } = await ask();
    expect([status, JSON.parse(text)]).toEqual([
      404,
      { error: "No meal is being cooked, so there is no calendar file. Begin one first." },
    ]);
  });

  it("[P59] goes to our own page and to programs on this machine, and to nobody else", async () => {
    light();
    const { port } = server.address() as AddressInfo;
    const host = `127.0.0.1:${port}`;
    const asked: readonly (readonly [Record<string, string>, number])[] = [
      [{ host, "sec-fetch-site": "same-origin" }, 200],
      [{ host, "sec-fetch-site": "none" }, 200],
      [{ host, "sec-fetch-site": "cross-site" }, 403],
      [{ host, "sec-fetch-site": "same-site" }, 403],
      [{ host, origin: "http://other.example" }, 403],
      [{ host: "other.example" }, 421],
    ];
    for (const [headers, status] of asked) {
      const answer = await ask(headers);
      expect([headers, answer.status]).toEqual([headers, status]);
      if (status !== 200) expect(answer.text).not.toContain("BEGIN");
    }
  });
});
