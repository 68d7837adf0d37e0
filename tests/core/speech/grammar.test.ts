import { describe, expect, it } from "vitest";
import type { Grammar, Phrase } from "../../../core/speech/grammar.ts";
import { toJsgf } from "../../../core/speech/jsgf.ts";
import { createMatcher } from "../../../core/speech/progress.ts";
import { spokenWords } from "../../../core/speech/spoken-words.ts";
import { vocabulary } from "../../../core/speech/vocabulary.ts";
import { toWordList } from "../../../core/speech/word-list.ts";

const words = (text: string): Phrase => ({ kind: "words", text });
const grammarOf = (rules: Readonly<Record<string, Phrase>>): Grammar => ({
  root: "top",
  rules: new Map(Object.entries(rules)),
});

const timers = grammarOf({
  top: {
    kind: "choice",
    of: [
      words("Next step!"),
      {
        kind: "sequence",
        of: [words("stop"), { kind: "optional", of: words("the") }, { kind: "rule", name: "a dish" }],
      },
    ],
  },
  "a dish": { kind: "choice", of: [words("rice"), words("rice pudding")] },
  unused: words("never"),
});

describe("grammars", () => {
  it("[V1] a grammar becomes JSGF with one public rule and only the rules it reaches", () => {
    expect(toJsgf(timers, { address: null, mode: "open", chatter: "force" })).toEqual({
      ok: true,
      value: [
        "#JSGF V1.0 UTF-8 en;",
        "grammar kitchen;",
        "public <top> = <r0>;",
        "<r0> = ( next step | ( stop ) ( [ the ] ) ( <r1> ) );",
        "<r1> = ( rice | rice pudding );",
        "",
      ].join("\n"),
    });
  });

  it("[V1] a rule that refers to itself through another is named with its circle", () => {
    const circle = grammarOf({
      top: { kind: "rule", name: "a" },
      a: { kind: "optional", of: { kind: "rule", name: "top" } },
    });
    expect(toJsgf(circle, { address: null, mode: "open", chatter: "force" })).toEqual({
      ok: false,
      error: 'The rule "top" refers to itself: top, a, top. Write it out.',
    });
  });

  it("[V1] a missing rule is named", () => {
    expect(
      toJsgf(grammarOf({ top: { kind: "rule", name: "dish" } }), {
        address: null,
        mode: "open",
        chatter: "force",
      }),
    ).toEqual({
      ok: false,
      error: 'The grammar has no rule "dish". Add it, or correct the name.',
    });
  });

  it("[V2] addressed mode puts the address first and refuses to go without one", () => {
    const jsgf = toJsgf(timers, { address: "Okay, kitchen", mode: "addressed", chatter: "absorb" });
    expect(jsgf.ok && jsgf.value).toContain(
      "public <top> = /1000/ <address> <r0> | /1/ <address> | /1/ <chatter>;\n<address> = okay kitchen;",
    );
    expect(toJsgf(timers, { address: " - ", mode: "addressed", chatter: "absorb" }).ok).toBe(false);
  });

  it("[V3] the chatter loop has one word for each of the 39 phones", () => {
    const jsgf = toJsgf(timers, { address: null, mode: "open", chatter: "absorb" });
    const sounds = jsgf.ok ? /<sound> = (.*);/.exec(jsgf.value)?.[1]?.split(" | ") : [];
    expect(new Set(sounds).size).toBe(39);
  });

  it("[V5] words lose case, punctuation and hyphens, and keep accents and inner apostrophes", () => {
    expect(spokenWords("  'Za’atar' & JALAPEÑO, all-purpose <b>; (12)")).toEqual([
      "za'atar",
      "jalapeño",
      "all",
      "purpose",
      "b",
      "12",
    ]);
  });

  it("[V5] the vocabulary is every word of the reachable rules", () => {
    expect([...vocabulary(timers)].sort()).toEqual(["next", "pudding", "rice", "step", "stop", "the"]);
  });

  it("[V19] the word list has each word once, the address and the unknown mark", () => {
    expect(toWordList(timers, "the kitchen")).toEqual([
      "the",
      "kitchen",
      "next",
      "step",
      "stop",
      "rice",
      "pudding",
      "[unk]",
    ]);
  });

  it.each([
    ["", "begun"],
    ["stop the", "begun"],
    ["stop rice", "may-go-on"],
    ["stop the rice pudding", "finished"],
    ["next step", "finished"],
    ["step next", "unmatched"],
    ["next step please", "unmatched"],
  ])("[V8] %j is %s", (text, progress) => {
    expect(createMatcher(timers).progress(spokenWords(text))).toBe(progress);
  });
});
