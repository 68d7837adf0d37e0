import { describe, expect, it } from "vitest";
import { cooksSpeech } from "../../../core/speech/cooks-speech.ts";
import type { Grammar } from "../../../core/speech/grammar.ts";
import {
  asSaid,
  asWritten,
  readRespelling,
  type Respelling,
  respelt,
} from "../../../core/speech/respelling.ts";
import { allows } from "../../voice/grammars.ts";

const quinoa: Respelling = { word: "quinoa", like: "keen wah" };
const dishes: Grammar = {
  root: "start",
  rules: new Map([
    [
      "start",
      {
        kind: "choice",
        of: [
          { kind: "words", text: "how much quinoa in the Quinoa salad" },
          {
            kind: "sequence",
            of: [
              { kind: "words", text: "start" },
              { kind: "optional", of: { kind: "words", text: "the quinoa" } },
            ],
          },
          { kind: "words", text: "next step" },
        ],
      },
    ],
  ]),
};

describe("words as a cook says them", () => {
  it.each([
    ["Quinoa", " Keen  WAH ", quinoa],
    ["za'atar", "sart her", { word: "za'atar", like: "sart her" }],
    ["jalapeños", "holler pain yose", { word: "jalapeños", like: "holler pain yose" }],
  ])("[V75] %j said %j can be listened for", (word, like, respelling) => {
    expect(readRespelling(word, like)).toEqual({ ok: true, value: respelling });
  });

  it.each([
    ["", "keen wah", "Write the word itself first, as it stands in the recipe."],
    ["?!", "keen wah", "Write the word itself first, as it stands in the recipe."],
    ["red quinoa", "keen wah", '"red quinoa" is several words; write one of them.'],
    ["quinoa", " - ", 'Write how you say "quinoa", in words that sound like it.'],
    ["quinoa", "k ee n w ah", 'Write how you say "quinoa" in four words or fewer.'],
    ["quinoa", "Quinoa", 'That is how "quinoa" is read already; write what sounds like it.'],
    ["quinoa", "k".repeat(31), "A word of more than thirty letters is too long; write it in parts."],
    ["7up", "seven up", "Write numbers in letters."],
  ])("[V75] %j said %j is refused in one sentence", (word, like, sentence) => {
    expect(readRespelling(word, like)).toEqual({ ok: false, error: sentence });
  });

  it("[V75] the grammar hears each respelt word both ways, wherever it stands, and the rest as before", () => {
    const said = respelt(dishes, [quinoa]);
    for (const sentence of [
      "how much keen wah in the keen wah salad",
      "how much keen wah in the quinoa salad",
      "how much quinoa in the quinoa salad",
      "start the keen wah",
      "start",
      "next step",
    ])
      expect(allows(said, sentence), sentence).toBe(true);
    expect(allows(said, "how much keen in the keen wah salad")).toBe(false);
    expect(allows(said, "keen wah")).toBe(false);
  });

  it("[V75] a grammar without such a word stays the very same", () => {
    expect(respelt(dishes, [])).toBe(dishes);
    expect(respelt(dishes, [{ word: "farro", like: "far oh" }])).toBe(dishes);
  });

  it("[V75] what was heard comes back in the recipe's own words, the longer respelling first", () => {
    const keen: Respelling = { word: "kine", like: "keen" };
    expect(asWritten("start the keen wah and keen".split(" "), [keen, quinoa]).join(" ")).toBe(
      "start the quinoa and kine",
    );
    expect(asWritten(["next", "step"], [quinoa])).toEqual(["next", "step"]);
  });

  it("[V75] the voice says it as the cook does: whole words only, whatever the case", () => {
    expect(asSaid("Quinoa: rinse the quinoa, not the quinoas.", [quinoa])).toBe(
      "keen wah: rinse the keen wah, not the quinoas.",
    );
    expect(asSaid("Zest the za'atar.", [{ word: "za'atar", like: "sart her" }])).toBe("Zest the sart her.");
  });

  it("[V75] all that an ear tells of a sentence is turned back: verdict, rivals and what is kept of it", () => {
    const speech = cooksSpeech([quinoa]);
    expect(speech.grammar(dishes)).toBe(speech.grammar(dishes));
    const heard = ["start", "the", "keen", "wah"];
    expect(
      speech.heard({
        kind: "heard",
        verdict: { kind: "command", words: heard, confidence: 1, rivals: [heard], addressed: true },
        levels: null,
        startedAtFrame: 0,
        endedAtFrame: 1,
        concludedAtFrame: 2,
        sound: { samples: new Float32Array(1), words: heard },
      }),
    ).toMatchObject({
      verdict: { words: ["start", "the", "quinoa"], rivals: [["start", "the", "quinoa"]] },
      sound: { words: ["start", "the", "quinoa"] },
    });
  });
});
