import { describe, expect, it } from "vitest";
import { fifteen, fifty, grammar, hear, play, turn, twoEars } from "../../voice/known-ears.ts";
import { createTwoEars } from "../../../core/speech/two-ears.ts";
import type { Transcriber } from "../../../core/speech/transcribe/transcriber.ts";
import { ok } from "../../../core/units/result.ts";
import { type Beliefs, createFakeTranscriber } from "../../voice/fake-transcriber.ts";
import { createFakeWordEngine } from "../../voice/fake-word-engine.ts";
import { listenTo } from "../../voice/grammars.ts";

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

  it("[V78] that never comes keeps nobody waiting, and one that comes too late is given back", async () => {
    const [transcriber, careful, engine] = [
      createFakeTranscriber(),
      createFakeTranscriber(),
      createFakeWordEngine(),
    ];
    let come = (): void => undefined;
    let given = 0;
    const late: Transcriber = {
      ...careful,
      load: () => new Promise((resolve) => (come = () => resolve(ok(null)))),
      free: () => {
        given++;
        return Promise.resolve();
      },
    };
    const acceptance = { address: 0.5, addressed: 0.5, open: 0.5, stopOnly: 0.5 };
    const ears = createTwoEars({
      quick: transcriber,
      careful: late,
      engine,
      acceptance,
      breathe: () => Promise.resolve(),
    });
    await ears.load();
    await ears.setGrammar(listenTo(grammar, { address: "listen kitchen", mode: "addressed" }));
    const verdict = await hear({ ears, transcriber, careful, engine }, { [called("next step")]: 0.9 });
    expect(verdict).toMatchObject({ words: ["next", "step"] });
    ears.free();
    await turn();
    const before = given;
    come();
    await ears.whole();
    expect(given).toBe(before + 1);
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

  it("[V79] a sentence that is as likely as what was written is whole, in however many words that was", async () => {
    const all = await twoEars("addressed", { hasCareful: true });
    all.transcriber.willBelieve({ "listen kitchen nec st ep we": 0.4, [called("next step")]: 0.5 });
    play(all.ears, 2);
    expect((await all.ears.anticipate(60)).words).toEqual(["listen", "kitchen", "next", "step"]);
  });

  it("[V79] what the large one is sure of before the pause is over is foreseen as all there is", async () => {
    const sentence = ["listen", "kitchen", "next", "step"];
    const foreseen = async (careful: Beliefs, room?: number) => {
      const all = await twoEars("addressed", { hasCareful: true });
      all.transcriber.willBelieve({
        "listen kitchen mix that we do": 0.99,
        [called("next step")]: 1e-3,
        [called("stop")]: 9e-4,
      });
      all.careful.willBelieve(careful);
      play(all.ears, 2, room);
      expect((await all.ears.anticipate(60)).words, "before it has looked").toEqual([]);
      for (let at = 0; at < 500; at++) await turn();
      return (await all.ears.anticipate(60)).words;
    };
    expect(await foreseen({ [called("next step")]: 0.9 })).toEqual(sentence);
    expect(
      await foreseen({ "listen kitchen next stop": 0.9, [called("next step")]: 0.05 }),
      "too far",
    ).toEqual([]);
    expect(await foreseen({ [called("next step")]: 0.5, [called("stop")]: 0.4 }), "torn").toEqual([]);
    expect(await foreseen({ [called("next step")]: 0.9 }, 0.02), "in noise").toEqual([]);
  });
});
