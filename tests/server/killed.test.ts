import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import SqliteDatabase from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { MealEvent } from "../../core/cook/events.ts";
import { timerId, type Order } from "../../core/cook/orders.ts";
import { minutes } from "../../core/units/quantity.ts";
import { Device } from "./device.ts";
import { startProcess, type ServerProcess } from "./server-process.ts";

let folder = "";
let server: ServerProcess | null = null;
const devices: Device[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "killed-"));
});
afterEach(async () => {
  for (const { socket } of devices.splice(0)) socket.close();
  await server?.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
});

const timer = (id: string): Order => ({
  type: "StartTimer",
  timer: timerId(id),
  name: id,
  span: { low: minutes(12), high: minutes(12) },
  dish: null,
});

/** Numbers without a gap, and every event of a command or none. */
function assertWhole(events: readonly MealEvent[]): void {
  expect(events.map(({ seq }) => seq)).toEqual(events.map((_, index) => index + 1));
}

describe("kill -9", () => {
  it("[N57] every acknowledged order outlives the server, none of them twice, and the log is whole", async () => {
    server = await startProcess(folder);
    const port = Number(new URL(server.url).port);
    const tablet = new Device(server.url);
    devices.push(tablet);
    await tablet.joined();
    await tablet.begin("welcome-supper");
    await tablet.until(() => tablet.session !== null);
    const acknowledged: string[] = [];
    const given: string[] = [];
    // A stream of orders, so that the kill falls into the middle of one; under the limit of twenty a second.
    const stream = (async () => {
      for (let index = 0; tablet.socket.connected && index < 38; index += 1) {
        const id = randomUUID();
        given.push(id);
        const answer = (await tablet.socket
          .timeout(500)
          .emitWithAck("order", {
            session: tablet.session,
            id,
            at: Date.now(),
            order:
              index % 2 === 0
                ? timer(`timer-${index}`)
                : { type: "LengthenTimer", timer: `timer-${index - 1}`, by: 60 },
          })
          .catch(() => null)) as { readonly ok: boolean } | null;
        if (answer?.ok === true) acknowledged.push(id);
      }
    })();
    await tablet.until(() => tablet.log.events.length >= 9);
    await server.kill("SIGKILL");
    await stream;
    expect(acknowledged.length).toBeGreaterThanOrEqual(5);

    server = await startProcess(folder, port);
    const before = tablet.snapshots;
    await tablet.until(() => tablet.snapshots > before || (tablet.socket.connected && tablet.snapshots > 1));
    const { events } = tablet.log;
    assertWhole(events);
    const kept = events.map(({ command }) => command);
    for (const id of acknowledged) expect(kept.filter((one) => one === id)).toHaveLength(1);
    // What was in flight is given again, as the page does, and is carried out exactly once.
    for (const id of given.filter((one) => !acknowledged.includes(one))) {
      await tablet.order(timer(`again-${id}`), id);
      await tablet.until(() => tablet.log.events.some(({ command }) => command === id));
      expect(tablet.log.events.filter(({ command }) => command === id)).toHaveLength(1);
    }
    await server.kill("SIGKILL");
    server = null;
    const database = new SqliteDatabase(join(folder, "stovecall.db"), { readonly: true });
    expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
    expect(database.pragma("foreign_key_check")).toEqual([]);
    database.close();
  }, 60_000);

  it("[N58] SIGTERM ends the server cleanly", async () => {
    server = await startProcess(folder);
    expect(await server.kill("SIGTERM")).toBe(0);
    server = null;
  });

  it("[N59] a log that is no log keeps the server from starting, with one sentence and no trace", async () => {
    await expect(startProcess(join("/dev/null", "kitchen"))).rejects.toThrow(
      /^The meal log \/dev\/null\/kitchen\/stovecall\.db cannot be opened \(ENOTDIR[^\n]*\)\. Name another folder with --data\.\n$/,
    );
  });
});
