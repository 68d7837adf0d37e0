import { describe, expect, it } from "vitest";
import { minutes, seconds } from "../../core/units/quantity.ts";
import { readScript, type ScriptLine } from "../../server/rehearsal/script.ts";

const atOnce = { kind: "at-once" } as const;
const only = (text: string): Omit<ScriptLine, "number"> => {
  const read = readScript(text);
  if (!read.ok) throw new Error(read.error);
  const [line, ...more] = read.value;
  if (line === undefined || more.length > 0) throw new Error(`${read.value.length} lines`);
  return { when: line.when, deed: line.deed };
};

describe("a rehearsal script", () => {
  it.each<[string, Omit<ScriptLine, "number">]>([
    ["what now", { when: atOnce, deed: { kind: "say", words: "what now" } }],
    ["17:05 done", { when: { kind: "at", minute: 1025 }, deed: { kind: "say", words: "done" } }],
    [
      "+3 min what now",
      { when: { kind: "after", wait: minutes(3) }, deed: { kind: "say", words: "what now" } },
    ],
    ["+20 s done", { when: { kind: "after", wait: seconds(20) }, deed: { kind: "say", words: "done" } }],
    ["+10 min", { when: { kind: "after", wait: minutes(10) }, deed: { kind: "pass" } }],
    ["until 9:40", { when: { kind: "at", minute: 580 }, deed: { kind: "pass" } }],
    ["wait for ring", { when: atOnce, deed: { kind: "wait-for-ring", of: null } }],
    ["wait for ring lentil soup", { when: atOnce, deed: { kind: "wait-for-ring", of: "lentil soup" } }],
    ["wait for call", { when: atOnce, deed: { kind: "wait-for-call" } }],
    ["hear my file.wav", { when: atOnce, deed: { kind: "hear", file: "my file.wav" } }],
    ["17:10 hear a.wav", { when: { kind: "at", minute: 1030 }, deed: { kind: "hear", file: "a.wav" } }],
    ["cook until 17:40", { when: atOnce, deed: { kind: "cook", until: { kind: "minute", minute: 1060 } } }],
    ["cook until ring", { when: atOnce, deed: { kind: "cook", until: { kind: "ring", of: null } } }],
    ["cook until ring pears", { when: atOnce, deed: { kind: "cook", until: { kind: "ring", of: "pears" } } }],
    ["cook to the table", { when: atOnce, deed: { kind: "cook", until: { kind: "table" } } }],
    ['"wait for ring"', { when: atOnce, deed: { kind: "say", words: "wait for ring" } }],
    ["  done   # at last", { when: atOnce, deed: { kind: "say", words: "done" } }],
  ])("[N73] %s", (text, line) => expect(only(text)).toEqual(line));

  it("[N73] comments and empty lines do nothing, and lines keep their numbers", () => {
    const read = readScript("# an evening\r\n\r\nwhat now\n  # later\ndone\n");
    expect(read.ok ? read.value.map(({ number }) => number) : read.error).toEqual([3, 5]);
  });

  it.each([
    ["hear", /^Line 2 of the script, "hear": write hear FILE/],
    ["wait a minute", /^Line 2 of the script, "wait a minute": .* in quotes\.$/],
    ["cook the carrots", /^Line 2 of the script/],
    ["cook until noon", /^Line 2 of the script/],
    ["until noon", /^Line 2 of the script, "until noon": write a time of day like 17:40 after until\.$/],
    ["until 25:00", /^Line 2 of the script/],
    ["17:75 done", /^Line 2 of the script, "17:75 done": there is no such time of day/],
  ])("[N73] %s means nothing and is named by its number", (text, sentence) => {
    const read = readScript(`what now\n${text}`);
    expect(read.ok ? "" : read.error).toMatch(sentence);
  });

  it("[N73] a script that does nothing is refused", () => {
    expect(readScript("# nothing\n")).toEqual({
      ok: false,
      error: "The script has no line that does anything.",
    });
  });
});
