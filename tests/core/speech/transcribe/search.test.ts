import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toAutomaton } from "../../../../core/speech/automaton.ts";
import type { Grammar } from "../../../../core/speech/grammar.ts";
import {
  type Found,
  freeSearch,
  patientSearch,
  quickSearch,
  search,
  type SearchSettings,
} from "../../../../core/speech/transcribe/search.ts";
import { createSpeller } from "../../../../core/speech/transcribe/speller.ts";
import { WordPaths } from "../../../../core/speech/transcribe/word-paths.ts";
import { type Beliefs, fakeTokens, fakeWriting, scoreOf } from "../../../voice/fake-transcriber.ts";
import { grammarOf, listenTo } from "../../../voice/grammars.ts";

const speller = createSpeller(fakeTokens);

const pathsOf = (grammar: Grammar): WordPaths => {
  const automaton = toAutomaton(listenTo(grammar));
  if (!automaton.ok) throw new Error(automaton.error);
  return new WordPaths(automaton.value, speller);
};

const timing = grammarOf(
  "listen kitchen",
  "listen kitchen next step",
  "listen kitchen set a timer for fifteen minutes",
  "listen kitchen set a timer for fifty minutes",
  "listen kitchen set a timer for five minutes",
);

const settingsOf = (how: Partial<SearchSettings> = {}): SearchSettings => ({
  ...quickSearch,
  speechS: 0,
  address: ["listen", "kitchen"],
  isAddressed: false,
  isGivenUp: () => Promise.resolve(false),
  ...how,
});

const find = (beliefs: Beliefs, how: Partial<SearchSettings> = {}, grammar = timing): Promise<Found> =>
  search(fakeWriting(beliefs), pathsOf(grammar), fakeTokens, settingsOf(how));

const said = ({ candidates }: Found): readonly string[] => candidates.map(({ words }) => words.join(" "));

describe("the search", () => {
  it("[V52] finds the likeliest sentence of the grammar where the model would write another", async () => {
    const found = await find({ "listen kitchen next stop": 0.7, "listen kitchen next step": 0.3 });
    expect(found.free.text).toBe("listen kitchen next stop");
    expect(found.free.score).toBeCloseTo(Math.log(0.7), 4);
    expect(said(found)[0]).toBe("listen kitchen next step");
    expect(found.candidates[0]?.score).toBeCloseTo(Math.log(0.3), 4);
    // Whatever else was looked at lies as far away as a letter that the model does not believe in.
    for (const { score } of found.candidates.slice(1)) expect(score).toBeLessThan(-15);
  });

  it("[V52] finds a sentence whose last letters the model does not believe in, and how far away it lies", async () => {
    const found = await find({ "listen kitchen next stop": 1 }, patientSearch);
    expect(said(found)).toContain("listen kitchen next step");
    for (const { score } of found.candidates) expect(score).toBeLessThan(-15);
  });

  it("[V52] sentences come with their rivals, the likeliest first", async () => {
    const found = await find({
      "listen kitchen, set a timer for 50 minutes.": 0.6,
      "listen kitchen, set a timer for 15 minutes.": 0.3,
      "listen kitchen, set a timer for 5 minutes.": 0.1,
    });
    expect(said(found).slice(0, 3)).toEqual([
      "listen kitchen set a timer for fifty minutes",
      "listen kitchen set a timer for fifteen minutes",
      "listen kitchen set a timer for five minutes",
    ]);
  });

  it("[V52] a sentence that may be written in two ways is one, as likely as the likelier", async () => {
    const found = await find({
      "listen kitchen set a timer for fifteen minutes": 0.25,
      "listen kitchen set a timer for 15 minutes": 0.35,
      "listen kitchen set a timer for 15 minutes.": 0.4,
    });
    const same = said(found).filter((text) => text.includes("fifteen"));
    expect(same).toHaveLength(1);
    expect(found.candidates[0]?.score).toBeCloseTo(Math.log(0.4), 4);
  });

  it("[V52] the address alone, however likely, rules out no sentence that goes on", async () => {
    const beliefs = { "listen kitchen": 1, "listen kitchen next step": Math.exp(-12) };
    expect(said(await find(beliefs))).toEqual(["listen kitchen", "listen kitchen next step"]);
    expect(said(await find(beliefs, { address: [] }))).toEqual(["listen kitchen"]);
  });

  it("[V53] every letter that a sentence is too short for the time of the speech costs", async () => {
    const beliefs = { "listen kitchen": 0.5, "listen kitchen next step": 0.5 };
    const scores = async (speechS: number): Promise<readonly (number | undefined)[]> => {
      const { candidates } = await find(beliefs, { ...patientSearch, speechS });
      return ["listen kitchen", "listen kitchen next step"].map(
        (text) => candidates.find(({ words }) => words.join(" ") === text)?.score,
      );
    };
    const [half, whole] = [Math.log(0.5), Math.log(0.5)];
    // 13 and 21 letters: 1.5 and 2.2 s of speech, the first syllable apart.
    for (const [speechS, short, long] of [
      [1.5, half, whole],
      [2.2, half - 2 * (1.85 * 11 - 13), whole],
      [2.9, half - 2 * (2.55 * 11 - 13), whole - 2 * (2.55 * 11 - 21)],
    ] as const) {
      const [first = NaN, second = NaN] = await scores(speechS);
      expect(first).toBeCloseTo(short, 3);
      expect(second).toBeCloseTo(long, 3);
    }
  });

  it("[V53] speech that begins like no sentence is given up after a few letters, and then costs one draft", async () => {
    const writing = fakeWriting({ "we drove along the river until the bridge was closed": 1 });
    const found = await search(writing, pathsOf(timing), fakeTokens, settingsOf());
    expect(found).toMatchObject({
      candidates: [],
      free: { text: expect.stringContaining("river") as string },
    });
    expect(writing.rows.slice(4).filter((drafts) => drafts > 1)).toEqual([]);
  });

  it("[V68] it tells how likely the address was said first, whatever followed and however it is written", async () => {
    const likely = await find({ "Listen, Kitchen, mix that": 0.6, "we drove": 0.4 });
    expect(likely.called).toBeCloseTo(Math.log(0.6), 2);
    expect((await find({ "listen to that": 1 })).called).toBeLessThan(-15);
    expect((await find({ "listen kitchen": 1 }, { address: ["stop"] })).called).toBe(-Infinity);
  });

  it("[V68] where every sentence begins with the address, speech that does not is given up within its letters", async () => {
    const other = { "we drove along the river until the bridge was closed": 1 };
    const writing = fakeWriting(other);
    const found = await search(writing, pathsOf(timing), fakeTokens, settingsOf({ isAddressed: true }));
    expect(found.candidates).toEqual([]);
    expect(writing.rows.length).toBeLessThan("listen kitchen".length);
    const called = { "listen kitchen next step": 1 };
    expect(said(await find(called, { isAddressed: true }))[0]).toBe("listen kitchen next step");
  });

  it("[V53] a quick search never has more drafts than it may, and one beside them", async () => {
    const beliefs = Object.fromEntries(
      [
        "next step",
        "set a timer for fifteen minutes",
        "set a timer for fifty minutes",
        "set a timer for 5 minutes",
      ].map((text) => [`listen kitchen ${text}`, 0.25]),
    );
    const writing = fakeWriting(beliefs);
    await search(writing, pathsOf(timing), fakeTokens, settingsOf({ drafts: 2 }));
    expect(Math.max(...writing.rows)).toBe(3);
  });

  it("[V53] a text that never ends is cut off", async () => {
    const writing = fakeWriting({ ["a".repeat(200)]: 1 });
    const found = await search(writing, pathsOf(timing), fakeTokens, settingsOf({ longest: 48 }));
    expect(found.free.text).toHaveLength(47); // and the space before it
    expect(writing.rows).toHaveLength(49);
  });

  it("[V53] it stops at the token after which nobody wants the answer any more", async () => {
    const writing = fakeWriting({ "listen kitchen next step": 1 });
    let asked = 0;
    const isGivenUp = (): Promise<boolean> => Promise.resolve(++asked === 5);
    const found = await search(writing, pathsOf(timing), fakeTokens, settingsOf({ isGivenUp }));
    expect(found).toMatchObject({ candidates: [], free: { text: "liste" } });
    expect(writing.rows).toHaveLength(5);
  });

  it("[V52] without drafts it writes freely and looks for nothing", async () => {
    const writing = fakeWriting({ "listen kitchen next step": 1 });
    const found = await search(writing, pathsOf(timing), fakeTokens, settingsOf(freeSearch));
    expect(found).toMatchObject({ candidates: [], free: { text: "listen kitchen next step" } });
    expect(Math.max(...writing.rows)).toBe(1);
  });

  it("[V52] with room enough it finds what trying out every way to write every sentence finds", async () => {
    const sentences = ["go on", "go on five", "stop", "step five", "step fifteen", "fifteen step"];
    const ways = (text: string): readonly string[] => [
      text,
      text.replace("fifteen", "15").replace("five", "5"),
      `${text}.`,
    ];
    const texts = [...sentences, "gone", "steps", "go on 50"].flatMap(ways);
    const wide = { drafts: 60, width: 500, widthBelowFree: 500, longest: 24, address: [] };
    const weights = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 3, maxLength: 3 });
    await fc.assert(
      fc.asyncProperty(
        fc.subarray(texts, { minLength: 3, maxLength: 3 }),
        weights,
        async (chosen, weight) => {
          const total = weight.reduce((a, b) => a + b, 0);
          const beliefs = Object.fromEntries(chosen.map((text, at) => [text, (weight[at] ?? 0) / total]));
          const best = Math.max(...sentences.flatMap(ways).map((text) => scoreOf(text, beliefs)));
          const found = await find(beliefs, wide, grammarOf(...sentences));
          expect(found.candidates[0]?.score).toBeGreaterThan(best - 1e-3);
          // Nothing is likelier than the beliefs allow.
          expect(found.candidates[0]?.score).toBeLessThan(Math.max(best, -8) + 1e-3);
        },
      ),
      { numRuns: 20, seed: 3 },
    );
  });
});
