import { describe, expect, it } from "vitest";
import type { Beliefs } from "../../voice/fake-transcriber.ts";
import { play, turn, twoEars } from "../../voice/known-ears.ts";

describe("other voices", () => {
  const radio: Beliefs = { "we drove along the river": 0.99 };
  const call: Beliefs = { "listen kitchen next step": 0.9 };

  it("[V73] a call over somebody else's talk is looked for where a louder voice began", async () => {
    const { ears, transcriber } = await twoEars();
    play(ears, 4);
    transcriber.willBelieve(radio);
    await ears.anticipate(150);
    play(ears, 1.5);
    ears.mayBegin(1.5 * 16_000);
    transcriber.willBelieveOf(2, call, radio);
    expect(await ears.end(275)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(transcriber.takenIn).toEqual([4 * 16_000, 1.5 * 16_000]);
  });

  it("[V73] a cook who grew louder in the middle of a call is heard from the beginning", async () => {
    const { ears, transcriber } = await twoEars();
    transcriber.willBelieveOf(1.5, { "next step": 0.9 }, call);
    play(ears, 2);
    ears.mayBegin(16_000);
    expect(await ears.end(null)).toMatchObject({ kind: "command", words: ["next", "step"] });
    expect(transcriber.takenIn).toEqual([16_000, 2 * 16_000]);
  });

  it("[V73] without the address a sentence counts from there too; with it nothing is obeyed that nobody called", async () => {
    for (const [mode, expected] of [
      ["open", { kind: "command", words: ["next", "step"] }],
      ["addressed", { kind: "none", why: "chatter" }],
    ] as const) {
      const { ears, transcriber } = await twoEars(mode);
      transcriber.willBelieveOf(1.5, { "next step": 0.9 }, radio);
      play(ears, 2.5);
      ears.mayBegin(16_000);
      expect(await ears.end(null)).toMatchObject(expected);
    }
  });

  it("[V14] while the caller speaks the address is shown as soon as it was said, and nothing else", async () => {
    const all = await twoEars("stop-only");
    const { ears, transcriber } = all;
    transcriber.willBelieve({ "listen kitchen": 0.99 });
    play(ears, 0.4);
    await turn();
    expect(transcriber.takenIn).toEqual([]);
    play(ears, 0.4);
    await turn();
    expect(ears.partial()).toEqual(["listen", "kitchen"]);
    transcriber.willBelieve({ "stir the stew": 0.99 });
    play(ears, 0.6);
    await turn();
    expect(ears.partial()).toEqual([]);
    expect(transcriber.takenIn).toHaveLength(2);
  });

  it("[V77] while the caller speaks on without a call it is soon not listened to any more, but a louder voice is", async () => {
    const { ears, transcriber } = await twoEars("stop-only");
    transcriber.willBelieve({ "stir the stew": 0.99 });
    for (let at = 0; at < 10; at++) {
      play(ears, 0.6);
      await turn();
    }
    expect(transcriber.takenIn.map((samples) => samples / 16_000)).toEqual([0.6, 1.2, 1.8, 2.4, 3, 3.6]);
    ears.mayBegin(0.4 * 16_000);
    transcriber.willBelieve({ "listen kitchen": 0.99 });
    play(ears, 0.6);
    await turn();
    expect(transcriber.takenIn.at(-1)).toBe(16_000);
    expect(ears.partial()).toEqual(["listen", "kitchen"]);
  });
});
