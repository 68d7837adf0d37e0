import { readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { describe, expect, it } from "vitest";
import { toAutomaton } from "../../core/speech/automaton.ts";
import { loudness } from "../../core/speech/loudness.ts";
import { progressThrough } from "../../core/speech/progress.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";
import { grammarFor } from "../../core/talk/grammar-for.ts";
import { registers } from "./chatter-frames-table.ts";
import { framesOf, mostRepeats } from "./chatter-sentences.ts";
import { chatterWords } from "./chatter-words-table.ts";
import { eveningMoments } from "./evening-moments.ts";
import { otherSpeech, type OtherUtterance, tenHours } from "./other-speech.ts";
import { type Passage, passages, wordsASecond } from "./passages.ts";
import { recordedSpeech } from "./recorded-speech.ts";

const wordsIn = (text: string): number => text.split(/\s+/).length;
const sentencesIn = (text: string): readonly string[] => text.split(/(?<=[.?!]"?) /);
const clausesIn = (text: string): readonly string[] =>
  text
    .split(/[,.;:?!"]+/)
    .map((clause) => clause.trim())
    .filter((clause) => clause !== "");

/** Talk of one seed, up to so many words. */
function talkOf(seed: number, words: number): readonly Passage[] {
  const talk: Passage[] = [];
  let count = 0;
  for (const passage of passages(seed)) {
    talk.push(passage);
    count += wordsIn(passage.text);
    if (count >= words) break;
  }
  return talk;
}

const hours = talkOf(1, tenHours * wordsASecond);

/** Courtesies are in the grammar and do nothing: these alone may stand between two pauses. */
const courtesies = new Set(["okay", "thank you"]);

async function listenedFor(): Promise<(clause: string) => boolean> {
  const { busy } = await eveningMoments();
  const what = { grammar: grammarFor(busy), address: null, mode: "open", stopSentences: [] } as const;
  const automaton = toAutomaton(what);
  if (!automaton.ok) throw new Error(automaton.error);
  return (clause) => {
    const words = spokenWords(clause);
    if (courtesies.has(words.join(" "))) return false;
    const come = progressThrough(automaton.value, words);
    return come === "finished" || come === "may-go-on";
  };
}

async function collect(seed: number, seconds: number): Promise<readonly OtherUtterance[]> {
  const all: OtherUtterance[] = [];
  for await (const utterance of otherSpeech({ seed, seconds })) all.push(utterance);
  return all;
}

describe("other speech", () => {
  it("[V44] ten hours are at least 100,000 words, and no sentence comes more often than allowed", () => {
    const times = new Map<string, number>();
    for (const { text } of hours)
      for (const sentence of sentencesIn(text)) times.set(sentence, (times.get(sentence) ?? 0) + 1);
    const words = hours.reduce((sum, { text }) => sum + wordsIn(text), 0);
    expect(words).toBeGreaterThan(100_000);
    expect(words / wordsASecond).toBeGreaterThanOrEqual(tenHours);
    expect(Math.max(...times.values())).toBeLessThanOrEqual(mostRepeats);
    expect(times.size).toBeGreaterThan(7000);
  });

  it("[V44] it is of every register and voice, a tenth by the slow ones", () => {
    for (const register of registers)
      expect(hours.filter((passage) => passage.register === register).length).toBeGreaterThan(250);
    expect(new Set(hours.map(({ talker }) => talker.voice)).size).toBe(7);
    const slow = hours.filter(({ talker }) => talker.voice.startsWith("festival")).length;
    expect(slow / hours.length).toBeGreaterThan(0.07);
    expect(slow / hours.length).toBeLessThan(0.13);
  });

  it("[V44] nobody says the address", () => {
    for (const { text } of [...hours, ...talkOf(2, 50_000), ...recordedSpeech()])
      expect(` ${spokenWords(text).join(" ")} `).not.toContain(" listen kitchen ");
  });

  it("[V44] between two pauses nobody says what would be a command, however near it comes", async () => {
    const isListenedFor = await listenedFor();
    const said = [...hours, ...talkOf(2, 50_000)].flatMap(({ text }) => [
      ...sentencesIn(text),
      ...clausesIn(text),
    ]);
    const prompts = recordedSpeech().flatMap(({ text }) => [text, ...clausesIn(text)]);
    expect([...said, ...prompts].filter(isListenedFor)).toEqual([]);
    // The check can fail: these are what it looks for.
    expect(["next step", "what now", "louder", "set a timer for ten minutes"].every(isListenedFor)).toBe(
      true,
    );
  }, 60_000);

  it("[V44] the caller's own words are often in it", () => {
    const words = hours.flatMap(({ text }) => spokenWords(text));
    const anHour = (word: string): number =>
      (words.filter((each) => each === word).length * 3600 * wordsASecond) / words.length;
    for (const word of [
      "okay",
      "kitchen",
      "oven",
      "timer",
      "minutes",
      "stop",
      "stopped",
      "next",
      "done",
      "louder",
    ])
      expect(anHour(word), word).toBeGreaterThan(8);
  });

  it("[V44] every slot of every frame has words, and every list of words has a frame", () => {
    const used = registers.flatMap((register) =>
      framesOf(register).flatMap((frame) => [...frame.matchAll(/\{(\w+)\}/g)].map(([, slot = ""]) => slot)),
    );
    expect([...new Set(used)].sort()).toEqual([...chatterWords.keys()].sort());
    const frames = registers.flatMap(framesOf);
    expect(new Set(frames).size).toBe(frames.length);
    for (const words of chatterWords.values()) expect(words.every((word) => word !== "")).toBe(true);
  });

  it("[V44] the same seed speaks the same, sample by sample, and another seed something else", async () => {
    const [once, again, other] = [await collect(5, 30), await collect(5, 30), await collect(6, 30)];
    expect(again.map(({ text, speaker }) => [text, speaker])).toEqual(
      once.map(({ text, speaker }) => [text, speaker]),
    );
    for (const [at, { samples16k }] of once.entries())
      expect(again[at]?.samples16k.every((sample, k) => sample === samples16k[k])).toBe(true);
    expect(other.map(({ text }) => text)).not.toEqual(once.map(({ text }) => text));
    for (const { samples16k, text } of [...once, ...other])
      expect(loudness(samples16k), text).toBeGreaterThan(-45);
  }, 120_000);

  it("[V44] it stops when it is told to, and leaves no file", async () => {
    const left = (): readonly string[] =>
      readdirSync(tmpdir()).filter((name) => name.startsWith(`stovecall-other-${process.pid}-`));
    let count = 0;
    for await (const { text } of otherSpeech({ seed: 7, seconds: tenHours })) {
      expect(text).not.toBe("");
      count++;
      if (count === 3) {
        expect(left()).toHaveLength(1);
        break;
      }
    }
    expect(left()).toEqual([]);
    const seconds = (await collect(8, 20)).reduce(
      (sum, { samples16k }) => sum + samples16k.length / 16_000,
      0,
    );
    expect(seconds).toBeGreaterThanOrEqual(20);
    expect(seconds).toBeLessThan(100);
  }, 120_000);
});
