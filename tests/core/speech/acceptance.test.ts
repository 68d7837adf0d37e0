import { describe, expect, it } from "vitest";
import { confidenceOf, judge } from "../../../core/speech/acceptance.ts";
import { withoutFillers } from "../../../core/speech/chatter.ts";
import type { Hypothesis } from "../../../core/speech/word-engine.ts";

const said = (text: string, probability = 0.9): Hypothesis => ({
  words: text
    .split(" ")
    .filter(Boolean)
    .map((word, at) => ({ word, startS: at * 0.3, lengthS: 0.3, probability })),
});
const limits = { address: 0.2, addressed: 0.2, open: 0.95, stopOnly: 0.95 };

describe("acceptance", () => {
  it("[V5] fillers, chatter and marks of a second pronunciation are stripped", () => {
    expect(withoutFillers(["<sil>", "the(2)", "(NULL)", "~aa", "[NOISE]", "rice"])).toEqual(["the", "rice"]);
  });

  it("[V2] a sentence after the address is a command without it", () => {
    expect(
      judge(said("<sil> listen kitchen <sil> next step"), "Listen kitchen", "addressed", limits),
    ).toMatchObject({
      kind: "command",
      words: ["next", "step"],
      addressed: true,
    });
  });

  it("[V2] the same sentence without the address is nothing in addressed mode", () => {
    expect(judge(said("next step"), "listen kitchen", "addressed", limits)).toEqual({
      kind: "none",
      why: "chatter",
    });
  });

  it("[V2] the address alone is heard as that", () => {
    expect(judge(said("listen kitchen"), "listen kitchen", "open", limits)).toEqual({ kind: "address-only" });
  });

  it("[V2] a bare command bent into the address has called nobody", () => {
    const [listen, kitchen, ...rest] = said("listen kitchen next step").words;
    const bent: Hypothesis = {
      words: [listen, kitchen].flatMap((word) => (word === undefined ? [] : [{ ...word, probability: 0.4 }])),
    };
    const command: Hypothesis = { words: [...bent.words, ...rest] };
    expect(judge(command, "listen kitchen", "addressed", limits)).toEqual({ kind: "none", why: "chatter" });
    expect(judge(bent, "listen kitchen", "addressed", limits)).toEqual({ kind: "none", why: "chatter" });
  });

  it.each(["~aa ~k next step", "<sil>", ""])("[V3] %j is chatter", (text) => {
    expect(judge(said(text), null, "open", limits)).toEqual({ kind: "none", why: "chatter" });
  });

  it("[V3] without the address a sentence that fits badly is doubted, and the same after it is believed", () => {
    const badly = 0.7;
    expect(judge(said("next step", badly), "listen kitchen", "open", limits)).toEqual({
      kind: "none",
      why: "doubtful",
    });
    expect(judge(said("listen kitchen next step", badly), "listen kitchen", "open", limits)).toMatchObject({
      kind: "command",
    });
  });

  it("[V3] silence inside the words costs confidence without the address, none after it; noise always does", () => {
    expect(confidenceOf(said("<sil> next step <sil>", 1), "counted")).toBeCloseTo(1);
    expect(confidenceOf(said("next <sil> step", 1), "counted")).toBeCloseTo(2 / 3);
    expect(confidenceOf(said("next <sil> step", 1), "allowed")).toBeCloseTo(1);
    expect(confidenceOf(said("next [NOISE] step", 1), "allowed")).toBeCloseTo(2 / 3);
    expect(confidenceOf({ words: [] }, "counted")).toBe(0);
  });
});
