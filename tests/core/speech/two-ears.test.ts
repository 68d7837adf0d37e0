import { describe, expect, it } from "vitest";
import type { Beliefs } from "../../voice/fake-transcriber.ts";
import { grammarOf } from "../../voice/grammars.ts";
import { fifteen, fifty, grammar, hear, play, turn, twoEars } from "../../voice/known-ears.ts";

const words = (text: string): readonly string[] => text.split(" ");

const lost: Beliefs = {
  "listen kitchen mix that": 0.99,
  "listen kitchen next step": 0.99 * Math.exp(-15),
};
const torn: Beliefs = {
  [`listen kitchen ${fifteen}`]: 0.5,
  [`listen kitchen ${fifty}`]: 0.4,
};

/** The only word that is right, and one that is wrong by a letter which the model does not believe in. */
const bent = "listen kitchen next stop";

describe("two ears", () => {
  it("[V56] what is clear is believed without the second engine", async () => {
    const all = await twoEars();
    expect(await hear(all, { "listen kitchen, next step.": 0.9 })).toMatchObject({
      kind: "command",
      words: ["next", "step"],
      addressed: true,
      rivals: [],
    });
    expect(all.engine.reconsidered()).toBe(0);
    expect(all.engine.utterances).toEqual([]);
  });

  it("[V56] a doubt that the second engine settles alike leaves no rival", async () => {
    const all = await twoEars();
    all.engine.willReconsider("listen kitchen next step");
    const doubt: Beliefs = { "listen kitchen next step": 0.5, [`listen kitchen ${fifteen}`]: 0.4 };
    expect(await hear(all, doubt)).toMatchObject({ kind: "command", words: ["next", "step"], rivals: [] });
    expect(all.engine.reconsidered()).toBe(1);
  });

  it.each([
    ["2 leaves it in doubt", -2, [words(fifty)]],
    ["3 is believed", -3, []],
  ])(
    "[V69] in noise, of two numbers that differ in nothing else both ears choose one: a lead of %s",
    async (_lead, log, rivals) => {
      const all = await twoEars();
      all.engine.willReconsider(`listen kitchen ${fifteen}`);
      const doubt = { [`listen kitchen ${fifteen}`]: 0.8, [`listen kitchen ${fifty}`]: 0.8 * Math.exp(log) };
      expect(await hear(all, doubt, { isNoisy: true })).toMatchObject({
        kind: "command",
        words: words(fifteen),
        rivals,
      });
    },
  );

  it.each([
    ["the other of the two", `listen kitchen ${fifty}`],
    ["nothing", ""],
  ])("[V56] in noise a doubt stays one where the second engine hears %s", async (_what, heard) => {
    const all = await twoEars();
    all.engine.willReconsider(heard);
    expect(await hear(all, torn, { isNoisy: true })).toMatchObject({
      kind: "command",
      words: words(fifteen),
      rivals: [words(fifty)],
      addressed: true,
    });
  });

  it("[V56] in a doubt the second engine chooses among the sentences that it is between, and no others", async () => {
    const all = await twoEars();
    await hear(all, { "listen kitchen next step": 0.5, [`listen kitchen ${fifteen}`]: 0.4 });
    const [asked] = all.engine.asked;
    expect(asked).toMatchObject({ address: null, mode: "open" });
    expect(asked?.grammar).toEqual({
      ...grammarOf("listen kitchen next step", `listen kitchen ${fifteen}`),
      root: "sentence",
    });
  });

  it("[V56] where the second engine hears another one of them, that one comes first and the others stay rivals", async () => {
    const all = await twoEars();
    all.engine.willReconsider(`listen kitchen ${fifteen}`);
    const doubt: Beliefs = { "listen kitchen next step": 0.5, [`listen kitchen ${fifteen}`]: 0.4 };
    expect(await hear(all, doubt)).toMatchObject({ words: words(fifteen), rivals: [["next", "step"]] });
  });

  it("[V69] where only numbers are in doubt and noise fills them it is not asked: it would settle nothing", async () => {
    const all = await twoEars();
    await hear(all, torn, { isNoisy: true });
    expect(all.engine.asked).toEqual([]);
  });

  it.each([
    ["both for the teen", fifteen, 2, fifteen, []],
    ["both for the tens", fifty, -2, fifty, []],
    ["both for the teen, the first hardly", fifteen, 0.5, fifteen, [words(fifty)]],
    ["one for each", fifty, 3, fifteen, [words(fifty)]],
    ["the second says nothing", "", 1, fifteen, [words(fifty)]],
  ])(
    "[V76] in the quiet a teen is told from the tens by both ears: %s",
    async (_what, sounded, lead, believed, rivals) => {
      const all = await twoEars();
      all.engine.willReconsider(sounded === "" ? "" : `listen kitchen ${sounded}`);
      const share = Math.exp(lead) / (1 + Math.exp(lead));
      const doubt = {
        [`listen kitchen ${fifteen}`]: 0.9 * share,
        [`listen kitchen ${fifty}`]: 0.9 * (1 - share),
      };
      expect(await hear(all, doubt)).toMatchObject({ words: words(believed), rivals });
      expect(all.engine.asked[0]?.grammar).toEqual(
        grammarOf(`listen kitchen ${fifteen}`, `listen kitchen ${fifty}`),
      );
    },
  );

  it("[V56] a sentence that lies further off is asked about, and another opinion becomes a rival", async () => {
    const far: Beliefs = {
      [bent]: 0.99,
      "listen kitchen next step": 0.99 * Math.exp(-8),
      [`listen kitchen ${fifteen}`]: 0.99 * Math.exp(-14),
    };
    const agreed = await twoEars();
    agreed.engine.willReconsider("listen kitchen next step");
    expect(await hear(agreed, far)).toMatchObject({ words: ["next", "step"], rivals: [] });
    expect(agreed.engine.asked[0]?.grammar).toBe(grammar);
    const other = await twoEars();
    other.engine.willReconsider(`listen kitchen ${fifteen}`);
    expect(await hear(other, far)).toMatchObject({ words: ["next", "step"], rivals: [words(fifteen)] });
    other.engine.willReconsider(`listen kitchen ${fifty}`);
    expect(await hear(other, far), "what the first finds impossible").toMatchObject({ rivals: [] });
  });

  it("[V56] where nothing was found and the cook called, the second engine hears all there is to hear", async () => {
    const all = await twoEars();
    all.engine.willReconsider("listen kitchen next step");
    expect(await hear(all, lost)).toMatchObject({
      kind: "command",
      words: ["next", "step"],
      addressed: true,
    });
    expect(all.engine.asked.map((asked) => asked.grammar)).toEqual([grammar]);
    all.engine.willReconsider("");
    expect(await hear(all, lost)).toEqual({ kind: "none", why: "doubtful" });
    all.engine.willReconsider("~aa ~k");
    expect(await hear(all, lost)).toEqual({ kind: "none", why: "doubtful" });
    all.engine.willReconsider(`listen kitchen ${fifty}`);
    expect(await hear(all, lost)).toEqual({ kind: "none", why: "doubtful" });
  });

  it("[V56] without the address nothing is rescued: the second engine alone would obey a radio", async () => {
    const all = await twoEars("open");
    all.engine.willReconsider("next step");
    expect(await hear(all, { "mix that": 0.99 })).toEqual({ kind: "none", why: "doubtful" });
    expect(all.engine.reconsidered()).toBe(0);
  });

  it("[V3][V56] chatter that begins like no call is none of ours, and the second engine is not asked", async () => {
    const all = await twoEars();
    all.engine.willReconsider("listen kitchen next step");
    for (const text of ["we drove along the river", "next step", fifteen])
      expect(await hear(all, { [text]: 0.99 })).toEqual({ kind: "none", why: "chatter" });
    expect(all.engine.asked).toEqual([]);
    expect(all.engine.reconsidered()).toBe(0);
  });

  it("[V56] who has talked of other things for three seconds is not taken in again, until the next utterance", async () => {
    const all = await twoEars();
    const { ears, transcriber } = all;
    transcriber.willBelieve({ "we drove along the river": 0.99 });
    play(ears, 4);
    await ears.anticipate(150);
    expect(transcriber.takenIn).toHaveLength(1);
    transcriber.willBelieve({ "listen kitchen next step": 0.99 });
    play(ears, 1);
    expect(await ears.end(250)).toEqual({ kind: "none", why: "chatter" });
    expect(transcriber.takenIn).toHaveLength(1);
    expect(await hear(all, { "listen kitchen next step": 0.99 })).toMatchObject({ kind: "command" });
  });

  it("[V56] a click is nothing, and no model is asked", async () => {
    const all = await twoEars();
    expect(await hear(all, { "listen kitchen next step": 0.99 }, { seconds: 0.2 })).toEqual({
      kind: "none",
      why: "chatter",
    });
    expect(all.transcriber.takenIn).toEqual([]);
  });

  it("[V57] one pause is thought about once, asked as often as it is, and ended by it", async () => {
    const { ears, transcriber } = await twoEars();
    transcriber.willBelieve({ "listen kitchen next step": 0.99 });
    play(ears, 1.2);
    const both = [ears.anticipate(60), ears.anticipate(60)];
    expect((await Promise.all(both)).map((each) => each.words)).toEqual([
      words("listen kitchen next step"),
      words("listen kitchen next step"),
    ]);
    play(ears, 0.2);
    expect((await ears.anticipate(60)).words).toEqual(words("listen kitchen next step"));
    expect(await ears.end(60)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(transcriber.takenIn).toEqual([1.2 * 16_000]);
  });

  it.each([
    ["over, as something may be lost in the noise", 0.02, false],
    ["heard, where a voice stands clear and a second look would find the same", 1e-4, true],
  ])("[V57] what is in doubt at a glance is thought through when it is %s", async (_when, room, isAll) => {
    const { ears, transcriber, engine } = await twoEars();
    engine.willReconsider("listen kitchen next step");
    transcriber.willBelieve(lost);
    play(ears, 1.5, room);
    expect(await ears.anticipate(60)).toEqual({ words: [], isAll });
    for (let at = 0; at < 500; at++) await turn();
    expect(engine.reconsidered()).toBe(isAll ? 1 : 0);
    expect(await ears.end(60)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(engine.reconsidered()).toBe(1);
  });

  it("[V57] another pause is thought about anew, with all that was said by then", async () => {
    const { ears, transcriber } = await twoEars();
    transcriber.willBelieve({ "listen kitchen": 0.99 });
    play(ears, 1.2);
    expect((await ears.anticipate(60)).words).toEqual(["listen", "kitchen"]);
    transcriber.willBelieve({ "listen kitchen next step": 0.99 });
    play(ears, 1);
    expect(await ears.end(110)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(transcriber.takenIn).toEqual([1.2 * 16_000, 2.2 * 16_000]);
  });

  it("[V57] an utterance that was cut off is heard to its last sample, whatever was thought in a pause", async () => {
    const { ears, transcriber } = await twoEars();
    transcriber.willBelieve({ "listen kitchen": 0.99 });
    play(ears, 1.2);
    await ears.anticipate(60);
    transcriber.willBelieve({ "listen kitchen next step": 0.99 });
    play(ears, 0.5);
    expect(await ears.end(null)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(transcriber.takenIn.at(-1)).toBe(1.7 * 16_000);
  });

  it("[V57] a thought about what was a pause only is given up, and leaves nothing behind", async () => {
    let turns = 0;
    const all = await twoEars("addressed", {
      breathe: async () => {
        turns++;
        await turn();
      },
    });
    const { ears, transcriber } = all;
    const sentence = `listen kitchen ${fifteen}`;
    transcriber.willBelieve({ [sentence]: 0.99 });
    play(ears, 3.5);
    const thought = ears.anticipate(170);
    for (let at = 0; at < 3; at++) await turn();
    ears.goOn();
    await thought;
    expect(turns).toBeLessThan(10);
    expect(ears.partial()).toEqual([]);
    play(ears, 0.5);
    expect(await ears.end(200)).toMatchObject({ kind: "command", words: words(fifteen) });
    expect(transcriber.takenIn).toEqual([3.5 * 16_000, 4 * 16_000]);
  });

  it("[V57] an utterance that is dropped in the middle of a thought leaves nothing to the next", async () => {
    const all = await twoEars("addressed", { breathe: turn });
    const { ears, transcriber } = all;
    transcriber.willBelieve({ "we drove along the river": 0.99 });
    play(ears, 3.5);
    const thought = ears.anticipate(170);
    await turn();
    await ears.forget();
    await thought;
    expect(ears.partial()).toEqual([]);
    expect(await hear(all, { "listen kitchen next step": 0.99 })).toMatchObject({ kind: "command" });
  });

  it("[V57] while only the cook speaks nothing is written down before a pause", async () => {
    const { ears, transcriber } = await twoEars();
    play(ears, 3);
    await turn();
    expect(transcriber.takenIn).toEqual([]);
  });
});
