import { get } from "node:http";
import { describe, expect, it } from "vitest";
import { OpenKitchen, timer } from "./open-kitchen.ts";

const kitchen = new OpenKitchen();

function statusOf(path: string, headers: Record<string, string>): Promise<number> {
  return new Promise((resolve, reject) => {
    const request = get(kitchen.server.url + path, { headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    });
    request.on("upgrade", (response) => resolve(response.statusCode ?? 0)).on("error", reject);
  });
}

describe("what a device may not do", () => {
  it("[N21] a foreign page gets no socket, by either way in", async () => {
    for (const transports of [["websocket"], ["polling"]]) {
      const extraHeaders = { origin: "https://evil.example" };
      const stranger = kitchen.stranger({ extraHeaders, transports, reconnection: false });
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
    const tablet = await kitchen.device();
    for (const event of ["order", "begin"]) {
      const answer = await tablet.send(event, payload);
      expect(answer.ok ? "" : answer.sentence).toMatch(/^[A-Z].*\.$/);
    }
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
  });

  it("[N53] words without an acknowledgement and unknown words do no harm", async () => {
    const tablet = await kitchen.device();
    tablet.socket.emit("order");
    tablet.socket.emit("begin", null, "no function");
    tablet.socket.emit("__proto__", {});
    tablet.socket.emit("shutdown", {});
    expect(await tablet.begin("welcome-supper")).toMatchObject({ ok: true });
  });

  it("[N54] a message of more than 64 kB closes the line and reaches nothing", async () => {
    const tablet = await kitchen.device({ reconnection: false, transports: ["websocket"] });
    const phone = await kitchen.device();
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
    const [stuck, phone] = [await kitchen.device(), await kitchen.device()];
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
