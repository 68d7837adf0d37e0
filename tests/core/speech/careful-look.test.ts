import { describe, expect, it } from "vitest";
import { fifteen, fifty, hear, play, twoEars } from "../../voice/known-ears.ts";
import type { Beliefs } from "../../voice/fake-transcriber.ts";

const called = (sentence: string): string => `listen kitchen ${sentence}`;
const unsure: Beliefs = { [called(fifteen)]: 0.4, [called(fifty)]: 0.3 };

describe("the large network", () => {
  it("[V78] is not asked where the small one is sure", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    expect(await hear(all, { [called("next step")]: 0.9 })).toMatchObject({ words: ["next", "step"] });
    expect(all.careful.takenIn).toEqual([]);
  });

  it("[V78] is asked in noise, however sure the small one is", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.careful.willBelieve({ [called("next step")]: 0.9 });
    expect(await hear(all, { [called(fifteen)]: 0.9 }, { isNoisy: true })).toMatchObject({
      words: ["next", "step"],
    });
  });

  it("[V78] decides between the sentences that the small one found possible", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.careful.willBelieve({ [called("next step")]: 0.9 });
    const between: Beliefs = { [called(fifteen)]: 0.4, [called("next step")]: 0.3 };
    const verdict = await hear(all, between, { isNoisy: true });
    expect(verdict).toMatchObject({ kind: "command", words: ["next", "step"], rivals: [] });
    expect(all.careful.takenIn).toEqual([2 * 16_000]);
  });

  it("[V76] does not outvote the small one about a teen and its tens: the cook is asked", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.careful.willBelieve({ [called(fifty)]: 0.9 });
    expect(await hear(all, unsure)).toMatchObject({ words: fifty.split(" "), rivals: [fifteen.split(" ")] });
  });

  it("[V78] looks through all sentences where none of those fits", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.careful.willBelieve({ [called("next step")]: 0.9 });
    expect(await hear(all, unsure)).toMatchObject({ kind: "command", words: ["next", "step"], rivals: [] });
  });

  it("[V78] is asked where the small one hears the address only perhaps, and believed either way", async () => {
    const perhaps: Beliefs = { "we drove along the river": 0.99, [called("next step")]: 3e-7 };
    const all = await twoEars("addressed", { hasCareful: true });
    all.careful.willBelieve({ [called("next step")]: 0.9 });
    expect(await hear(all, perhaps)).toMatchObject({ kind: "command", words: ["next", "step"] });
    all.careful.willBelieve({ "we drove along the river": 0.99 });
    expect(await hear(all, perhaps)).toEqual({ kind: "none", why: "chatter" });
    expect(all.careful.takenIn).toHaveLength(2);
  });

  it("[V78] is believed alone where a sentence fits well, and else only with the second ear", async () => {
    const lost: Beliefs = { "listen kitchen mix that": 0.99, [called("next step")]: 0.99 * Math.exp(-15) };
    const believed = async (fit: number, sounded: string) => {
      const all = await twoEars("addressed", { hasCareful: true });
      all.careful.willBelieve({
        "listen kitchen mix that": 0.99,
        [called("next step")]: 0.99 * Math.exp(-fit),
      });
      all.engine.willReconsider(sounded);
      return hear(all, lost);
    };
    expect(await believed(7, called(fifty))).toMatchObject({ words: ["next", "step"], rivals: [] });
    expect(await believed(12, called("next step"))).toMatchObject({ words: ["next", "step"], rivals: [] });
    expect(await believed(12, "")).toEqual({ kind: "none", why: "doubtful" });
    expect(await believed(17, "")).toEqual({ kind: "none", why: "doubtful" });
  });

  it("[V78] is left in peace by talk that has nothing of the address", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    expect(await hear(all, { "we drove along the river": 0.99 })).toEqual({ kind: "none", why: "chatter" });
    expect(all.careful.takenIn).toEqual([]);
  });

  it("[V78] where it cannot be loaded the small one looks once more itself", async () => {
    const all = await twoEars();
    all.engine.willHear(called(fifteen));
    expect(await hear(all, unsure, { isNoisy: true })).toMatchObject({
      words: fifteen.split(" "),
      rivals: [fifty.split(" ")],
    });
    expect([all.transcriber.takenIn, all.careful.takenIn]).toEqual([[2 * 16_000], []]);
  });

  it("[V78] a sentence of which it heard more than it has may go on", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.transcriber.willBelieve({ "listen kitchen next step we": 0.5, [called("next step")]: 0.4 });
    play(all.ears, 2);
    expect((await all.ears.anticipate(60)).words).toEqual([]);
    all.transcriber.willBelieve({ [called("next step")]: 0.9 });
    play(all.ears, 0.5);
    expect((await all.ears.anticipate(70)).words).toEqual(["listen", "kitchen", "next", "step"]);
  });
});
