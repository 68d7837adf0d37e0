import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Ear } from "../../../client/kitchen/ear-model.ts";
import { lateWords } from "../../../client/kitchen/late-words.ts";
import { words } from "../../../client/kitchen/words.ts";
import type { Words } from "../../../client/kitchen/words.ts";
import { lazyEar } from "../../../client/ui/ear/lazy-ear.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Words behind a server that can go away; `used` is what was done with them, `told` what the caller said of it. */
function wordsOver(server: { isThere: boolean }) {
  const told: string[] = [];
  const used: string[] = [];
  let fetches = 0;
  const load = async (): Promise<Words> => {
    fetches += 1;
    if (!server.isThere) throw new Error("away");
    return words;
  };
  const late = lateWords(load, (sentence) => told.push(sentence));
  const type = (text: string): void => late.use(() => used.push(text));
  return { late, told, used, type, fetches: () => fetches };
}

const settled = (): Promise<unknown> => vi.advanceTimersByTimeAsync(0);

describe("words that come after the page", () => {
  it("[W95] a sentence typed before they are there is kept, and each is answered in its turn", async () => {
    const { late, told, used, type, fetches } = wordsOver({ isThere: true });
    late.fetchUntilHere();
    type("what next");
    type("done");
    expect([used, late.areHere()]).toEqual([[], false]);
    await settled();
    expect([used, late.areHere()]).toEqual([["what next", "done"], true]);
    type("skip it");
    expect(used).toEqual(["what next", "done", "skip it"]);
    expect([told, fetches()]).toEqual([[], 1]);
  });

  it("[W96] without the server the caller says so once, and again to what has to wait", async () => {
    const server = { isThere: false };
    const { late, told, used, type } = wordsOver(server);
    late.fetchUntilHere();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(told).toEqual([expect.stringMatching(/^I cannot understand words .* when it is back\.$/)]);
    type("done");
    await vi.advanceTimersByTimeAsync(60_000);
    expect([told.length, new Set(told).size, used]).toEqual([2, 1, []]);
    server.isThere = true;
    await vi.advanceTimersByTimeAsync(5_000);
    expect([told.length, used]).toEqual([2, ["done"]]);
  });

  it("[W96] it tries again by itself, and never once they are there or the page is closed", async () => {
    const server = { isThere: false };
    const { late, type, fetches } = wordsOver(server);
    type("done");
    await vi.advanceTimersByTimeAsync(10_000);
    const tries = fetches();
    expect(tries).toBeGreaterThan(2);
    late.close();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(fetches()).toBe(tries);
    server.isThere = true;
    await late.fetch();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(fetches()).toBe(tries + 1);
  });

  it("[W97] an ear that cannot be loaded says what works without it", async () => {
    const canType = signal(false);
    const ear = lazyEar(
      () => Promise.reject<Ear>(new Error("away")),
      () => canType.value,
    );
    await ear.start();
    expect(ear.state.value).toEqual({
      kind: "trouble",
      sentence: "The ear could not be loaded. Touch it to try again; touching works.",
      loading: null,
    });
    canType.value = true;
    await ear.start();
    expect(ear.state.value.sentence).toContain("typing and touching work.");
  });
});
