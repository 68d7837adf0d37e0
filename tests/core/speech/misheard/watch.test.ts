import { describe, expect, it } from "vitest";
import {
  type Answer,
  forgetOld,
  idleWatch,
  type Sentence,
  watchAnswer,
} from "../../../../core/speech/misheard/watch.ts";
import { answerKind } from "../../../../core/talk/answer-kind.ts";
import { silentDialogue } from "../../../../core/talk/model.ts";
import { respond } from "../../../../core/talk/respond.ts";
import { respondUnsure } from "../../../../core/talk/respond-unsure.ts";
import { instant, plus, seconds } from "../../../../core/units/quantity.ts";
import { talk } from "../../talk/talk.ts";
import { evening, kitchenAt } from "../../talk/supper.ts";

const noon = instant(12 * 3_600_000);
const later = (s: number) => plus(noon, seconds(s));

const said = (heard: string, at = noon): Sentence => ({
  at,
  heard,
  rivals: [],
  grammar: { root: "sentence", rules: new Map() },
  samples: new Float32Array(1),
});

type Step = readonly [at: number, heard: string | null, answer: Answer];

/** What is kept of an evening's answers, in order. */
function kept(...steps: readonly Step[]) {
  let watch = idleWatch;
  return steps.flatMap(([s, heard, answer]) => {
    const sentence = heard === null ? null : said(heard, later(s));
    const step = watchAnswer(watch, { at: later(s), sentence, answer });
    watch = step.watch;
    return step.keep === null ? [] : [`${step.keep.sentence.heard}: ${step.keep.cameTo}`];
  });
}

describe("what counts as misheard", () => {
  it("[V92] a sentence that came to nothing, and one that was asked back, at once", () => {
    expect(kept([0, "nest stab", "nothing"], [9, "fifty", "asked-back"])).toEqual([
      "nest stab: nothing",
      "fifty: asked-back",
    ]);
  });

  it("[V92] a sentence that the cook takes back within thirty seconds, by voice, touch or typing", () => {
    expect(kept([0, "pause the timer", "deed"], [9, null, "taken-back"])).toEqual([
      "pause the timer: taken-back",
    ]);
    expect(kept([0, "what now", "words"], [30, "no", "taken-back"])).toEqual(["what now: taken-back"]);
    expect(kept([0, "pause the timer", "deed"], [31, "no", "taken-back"])).toEqual([]);
  });

  it("[V92] a sentence is taken back once, and the taking back is no sentence itself", () => {
    expect(kept([0, "skip this", "deed"], [4, "no", "taken-back"], [8, "undo that", "taken-back"])).toEqual([
      "skip this: taken-back",
    ]);
  });

  it("[V92] an undo after a touch takes back the touch, and no sentence", () => {
    expect(kept([0, "pause the timer", "deed"], [5, null, "deed"], [9, null, "taken-back"])).toEqual([]);
  });

  it("[V92] an answer that was right is forgotten, with the next sentence or in time", () => {
    expect(kept([0, "pause the timer", "deed"], [5, "what now", "words"], [9, null, "taken-back"])).toEqual([
      "what now: taken-back",
    ]);
    const held = { last: said("pause the timer") };
    expect(forgetOld(held, later(30))).toEqual(held);
    expect(forgetOld(held, later(31))).toEqual(idleWatch);
  });
});

describe("what an answer says of the sentence before", () => {
  const kitchen = { ...kitchenAt(evening(), 3), utteranceId: "say" };
  /** The kind of the last answer of a conversation. */
  const kindOf = (...lines: readonly string[]): Answer => {
    const all = talk(evening(), ...lines.map((line, at) => [3 + at / 10, line] as const));
    const before = talk(evening(), ...lines.slice(0, -1).map((line, at) => [3 + at / 10, line] as const));
    const reply = all.replies.at(-1);
    if (reply === undefined) throw new Error("nothing was said");
    return answerKind(reply, before.dialogue);
  };

  it.each<readonly [Answer, ...string[]]>([
    ["words", "when do we eat"],
    ["deed", "set a timer for ten minutes"],
    ["deed", "skip this step"],
    ["nothing", "the weather is lovely"],
    ["taken-back", "set a timer for fifty minutes", "no fifteen"],
    ["taken-back", "set a timer for fifty minutes", "no"],
    ["taken-back", "set a timer for fifty minutes", "undo that"],
    ["taken-back", "skip this step", "no"],
    ["taken-back", "when do we eat", "no"],
  ])("[V92] %s: %j %j", (kind, ...lines) => {
    expect(kindOf(...lines)).toBe(kind);
  });

  it("[V92] no more of a long answer, or none of a choice, takes nothing back", () => {
    for (const question of [
      { kind: "more", rest: ["and so on"], prompt: "More?" },
      { kind: "which", candidates: [], prompt: "Which one?" },
    ] as const) {
      const before = { ...silentDialogue, question };
      expect(answerKind(respond("no thanks", { ...kitchen, dialogue: before }), before)).toBe("words");
    }
  });

  it("[V92] a torn ear asks back", () => {
    const heard = ["set a timer for fifteen minutes", "set a timer for fifty minutes"].map((one) =>
      one.split(" "),
    );
    expect(answerKind(respondUnsure(heard, kitchen), silentDialogue)).toBe("asked-back");
  });
});
