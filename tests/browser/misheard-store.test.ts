import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Misheard } from "../../core/speech/misheard/misheard.ts";
import { instant } from "../../core/units/quantity.ts";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { ScreenBench } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;

const row = (at: number): Misheard => ({
  id: `row-${at}`,
  at: instant(at),
  heard: `sentence ${at}`,
  cameTo: "nothing",
  likely: ["next step"],
  meant: null,
});

/** These run in the page. */
type Bench = { readonly bench: ScreenBench };
const addAll = async (rows: readonly Misheard[]): Promise<readonly (string | null)[]> => {
  const { misheardStore: store } = (globalThis as unknown as Bench).bench;
  const faults: (string | null)[] = [];
  for (const one of rows) {
    const added = await store.add(one, new Uint8Array([one.at % 250, 1, 2]));
    faults.push(added.ok ? null : added.error);
  }
  return faults;
};
const listed = async (): Promise<readonly Misheard[] | string> => {
  const list = await (globalThis as unknown as Bench).bench.misheardStore.list();
  return list.ok ? list.value : list.error;
};
const soundOf = async (id: string): Promise<readonly number[] | string> => {
  const sound = await (globalThis as unknown as Bench).bench.misheardStore.sound(id);
  return sound.ok ? [...sound.value] : sound.error;
};
/** Does something to the bare database. */
const meddle = async (how: string): Promise<void> => {
  const settled = <T>(request: IDBRequest<T>): Promise<T> =>
    new Promise((resolve) => {
      request.onsuccess = () => resolve(request.result);
    });
  const opened = await settled(indexedDB.open("stovecall.misheard"));
  const transaction = opened.transaction(["sentences", "sounds"], "readwrite");
  if (how === "break a row")
    await settled(transaction.objectStore("sentences").put({ id: "row-2", at: "today", heard: 7 }));
  else await settled(transaction.objectStore("sounds").delete("row-1"));
  opened.close();
};

beforeAll(async () => {
  open = await openPage();
  await open.show((await scenes()).step);
});
afterAll(async () => open.close());
beforeEach(async () => {
  await open.page.reload();
  await open.show((await scenes()).step);
  await open.page.evaluate(
    "new Promise((done) => (indexedDB.deleteDatabase('stovecall.misheard').onsuccess = done)).then(() => 0)",
  );
});

describe("the browser's store of misheard sentences", () => {
  it("[V90] looking into it makes none", async () => {
    expect(await open.page.evaluate(listed)).toEqual([]);
    expect(await open.page.evaluate(soundOf, "row-1")).toContain("is gone");
    expect(await open.page.evaluate("indexedDB.databases().then((all) => all.length)")).toBe(0);
  });

  it("[V93] holds a hundred: the oldest go, and their sound with them", async () => {
    const rows = Array.from({ length: 103 }, (_, at) => row(at + 1));
    expect(new Set(await open.page.evaluate(addAll, rows))).toEqual(new Set([null]));
    expect(await open.page.evaluate(listed)).toEqual(rows.slice(3));
    expect(await open.page.evaluate(soundOf, "row-3")).toContain("is gone");
    expect(await open.page.evaluate(soundOf, "row-4")).toEqual([4, 1, 2]);
  });

  it("[V93] a row that is none is left out and deleted, a sound that is lost is one sentence", async () => {
    await open.page.evaluate(addAll, [row(1), row(2), row(3)]);
    await open.page.evaluate(meddle, "break a row");
    expect(await open.page.evaluate(listed)).toEqual([row(1), row(3)]);
    expect(await open.page.evaluate(soundOf, "row-2")).toContain("is gone");
    await open.page.evaluate(meddle, "lose a sound");
    expect(await open.page.evaluate(soundOf, "row-1")).toBe(
      "The sound of this sentence is gone. Delete the sentence.",
    );
    expect(await open.page.evaluate(listed)).toEqual([row(1), row(3)]);
  });

  it.each([
    ["QuotaExceededError", "The browser has no room left for misheard sentences."],
    ["UnknownError", "The misheard sentences cannot be reached (it went wrong)."],
  ])("[V94] %s while one is added is one sentence, and nothing of it is kept", async (name, sentence) => {
    await open.page.evaluate(addAll, [row(1)]);
    await open.page.evaluate((kind) => {
      const put = Object.getOwnPropertyDescriptor(IDBObjectStore.prototype, "put")
        ?.value as typeof IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, value: unknown, id?: IDBValidKey) {
        // The sentence itself goes in; its sound does not.
        if (this.name === "sounds") throw new DOMException("it went wrong", kind);
        return put.call(this, value, id);
      };
    }, name);
    expect(await open.page.evaluate(addAll, [row(2)])).toEqual([expect.stringContaining(sentence)]);
    expect(await open.page.evaluate(listed)).toEqual([row(1)]);
  });

  it("[V94] a browser that has no store, or closes it, is one sentence", async () => {
    await open.page.evaluate(() => {
      indexedDB.open = () => {
        throw new DOMException("denied", "SecurityError");
      };
    });
    const sentence =
      "This browser keeps nothing for this page, so misheard sentences cannot be kept. Allow it to, or use another window.";
    expect(await open.page.evaluate(listed)).toBe(sentence);
    expect(await open.page.evaluate(addAll, [row(1)])).toEqual([sentence]);
  });
});
