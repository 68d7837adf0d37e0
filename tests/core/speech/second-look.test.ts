import { describe, expect, it } from "vitest";
import { defaultEndpointer } from "../../../core/speech/endpointer.ts";
import { createHearing } from "../../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../../core/speech/hearing-settings.ts";
import type { Foreseen, Recogniser } from "../../../core/speech/recogniser.ts";
import { ok } from "../../../core/units/result.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";

/** One that always foresees the same, and remembers what it was asked about. */
function foreseeing(foreseen: Foreseen) {
  const asked: number[] = [];
  const ended: (number | null)[] = [];
  const recogniser: Recogniser = {
    load: () => Promise.resolve(ok(null)),
    whole: () => Promise.resolve(),
    setGrammar: () => Promise.resolve(ok(null)),
    accept: () => undefined,
    mayBegin: () => undefined,
    partial: () => foreseen.words,
    anticipate: (pause) => {
      if (asked.at(-1) !== pause) asked.push(pause);
      return Promise.resolve(foreseen);
    },
    goOn: () => undefined,
    end: (pause) => {
      ended.push(pause);
      return Promise.resolve({ kind: "none", why: "chatter" });
    },
    forget: () => Promise.resolve(),
    free: () => undefined,
  };
  return { recogniser, asked, ended };
}

const sound = (ms: number, level: number): Float32Array =>
  Float32Array.from({ length: 16 * ms }, (_, at) => level * Math.sin(at * 0.3));

async function asksAbout(words: readonly string[], isAll = false) {
  const { recogniser, asked, ended } = foreseeing({ words, isAll });
  const hearing = createHearing(
    { recogniser, detector: null },
    { ...defaultHearingTimes, endpointer: defaultEndpointer },
  );
  await hearing.listenFor(listenTo(grammarOf("next step")), "after-utterance");
  for (const block of [sound(800, 1e-4), sound(1600, 0.14), sound(1200, 1e-4)]) await hearing.accept(block);
  return { asked, ended };
}

describe("a second look", () => {
  it("[V57] a pause after a whole sentence is thought about once", async () => {
    const { asked, ended } = await asksAbout(["next", "step"]);
    expect(asked).toHaveLength(1);
    expect(ended).toEqual(asked);
  });

  it.each([[["next"]], [["banana"]], [[]]])(
    "[V57] a pause after %j is thought about again, with what was heard meanwhile, and that counts",
    async (words) => {
      const { asked, ended } = await asksAbout(words);
      const [first = 0, second = 0] = asked;
      expect(asked).toHaveLength(2);
      expect(second).toBeGreaterThan(first);
      expect(ended).toEqual([second]);
    },
  );

  it("[V57] where all of it was heard a second look is spared", async () => {
    const { asked, ended } = await asksAbout(["next"], true);
    expect(asked).toHaveLength(1);
    expect(ended).toEqual(asked);
  });
});
