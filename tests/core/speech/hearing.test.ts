import { describe, expect, it } from "vitest";
import { defaultEndpointer } from "../../../core/speech/endpointer.ts";
import {
  createHearing,
  defaultHearingTimes,
  type Hearing,
  type HearingEvent,
} from "../../../core/speech/hearing.ts";
import { createFakeRecogniser } from "../../voice/fake-recogniser.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";

const grammar = grammarOf("next step", "set a timer", "set a timer for one minute");
const settings = {
  ...defaultHearingTimes,
  endpointer: defaultEndpointer,
  acceptance: { address: 0, addressed: 0, open: 0, stopOnly: 0 },
};

/** A tone at -20 dBFS or a faint hiss, in blocks as a microphone gives them. */
async function play(hearing: Hearing, ms: number, kind: "voice" | "quiet"): Promise<readonly HearingEvent[]> {
  const events: HearingEvent[] = [];
  for (let at = 0; at < ms / 40; at++) {
    const block = Float32Array.from({ length: 640 }, (_, n) =>
      kind === "voice" ? 0.14 * Math.sin(n * 0.3) : 1e-4 * Math.sin(n * 1.7),
    );
    events.push(...(await hearing.accept(block)).filter((event) => event.kind !== "level"));
  }
  return events;
}

async function ear(mode: "addressed" | "open" = "addressed") {
  const recogniser = createFakeRecogniser();
  const hearing = createHearing(recogniser, settings);
  await hearing.listenFor(listenTo(grammar, { address: "okay kitchen", mode }), "after-utterance");
  await play(hearing, 800, "quiet");
  return { recogniser, hearing };
}

const verdicts = (events: readonly HearingEvent[]) =>
  events.flatMap((event) => (event.kind === "heard" ? [event.verdict] : []));

describe("hearing", () => {
  it("[V6] an utterance begins with its pre-roll and comes to one verdict", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("<sil> okay kitchen next step");
    const events = [...(await play(hearing, 800, "voice")), ...(await play(hearing, 600, "quiet"))];
    expect(events.map(({ kind }) => kind)).toEqual(["speech-started", "partial", "heard"]);
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"], addressed: true }]);
    expect(recogniser.utterances[0]).toBeGreaterThan((0.8 + 0.3) * 16_000);
  });

  it.each([
    ["okay kitchen next step", 200],
    ["okay kitchen set a timer", 360],
    ["okay kitchen", 500],
    ["okay kitchen set a timer for", 900],
  ])("[V8] %j is waited for %i ms", async (text, hangoverMs) => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear(text);
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, hangoverMs - 80, "quiet"))).toEqual([]);
    expect(verdicts(await play(hearing, 160, "quiet"))).toHaveLength(1);
  });

  it("[V12] the address alone is held, and its sound comes before the command that follows", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("okay kitchen");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 1500, "quiet"))).toEqual([{ kind: "address-only" }]);
    recogniser.willHear("okay kitchen next step");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 600, "quiet"))).toMatchObject([
      { kind: "command", words: ["next", "step"] },
    ]);
    const [address = 0, both = 0] = recogniser.utterances;
    expect(both).toBeGreaterThan(address + 0.6 * 16_000);
  });

  it("[V12] after four seconds the address is forgotten", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("okay kitchen");
    await play(hearing, 600, "voice");
    await play(hearing, 5000, "quiet");
    await play(hearing, 600, "voice");
    await play(hearing, 600, "quiet");
    expect(Math.abs((recogniser.utterances[1] ?? 0) - (recogniser.utterances[0] ?? 0))).toBeLessThan(1600);
  });

  it("[V17] a grammar that changes inside an utterance waits for its end", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("okay kitchen next step");
    await play(hearing, 400, "voice");
    await hearing.listenFor(listenTo(grammarOf("louder")), "after-utterance");
    expect(recogniser.asked).toHaveLength(1);
    expect(verdicts(await play(hearing, 600, "quiet"))).toMatchObject([{ kind: "command" }]);
    expect(recogniser.asked[1]?.mode).toBe("open");
  });

  it("[V17] a bare sentence that the caller speaks into is heard anew by the stricter rules", async () => {
    const { hearing, recogniser } = await ear("open");
    recogniser.willHear("next step");
    await play(hearing, 400, "voice");
    const muted = { address: "okay kitchen", mode: "stop-only", stopSentences: ["stop"] } as const;
    await hearing.listenFor(listenTo(grammar, muted), { keepMs: 15_000 });
    const events = [...(await play(hearing, 200, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toEqual([{ kind: "none", why: "doubtful" }]);
    const [before = 0, anew = 0] = recogniser.utterances;
    expect(anew).toBeGreaterThan(before);
  });

  it("[V17] a sentence that began with the address is let end, whoever speaks into it", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("okay kitchen next step");
    await play(hearing, 400, "voice");
    const muted = { address: "okay kitchen", mode: "stop-only", stopSentences: ["stop"] } as const;
    await hearing.listenFor(listenTo(grammar, muted), { keepMs: 15_000 });
    const events = [...(await play(hearing, 200, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    expect(recogniser.asked.map(({ mode }) => mode)).toEqual(["addressed", "stop-only"]);
  });

  it("[V22] what began while the caller fell silent is heard anew as an answer, without the caller's words", async () => {
    const { hearing, recogniser } = await ear();
    await hearing.listenFor(listenTo(grammar, { mode: "stop-only" }), { keepMs: 15_000 });
    await play(hearing, 2000, "voice");
    recogniser.willHear("next step");
    await hearing.listenFor(listenTo(grammar), { keepMs: 300 });
    const events = [...(await play(hearing, 400, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    // 300 ms kept, 400 ms spoken after, and the quiet that ends it: nothing of the two seconds before.
    expect(recogniser.utterances.at(-1)).toBeLessThan(1.1 * 16_000);
  });

  it("[V22] a beginning just after the caller's end takes nothing of it into its pre-roll", async () => {
    const { hearing, recogniser } = await ear();
    await play(hearing, 1000, "quiet");
    await hearing.listenFor(listenTo(grammar), { keepMs: 100 });
    recogniser.willHear("next step");
    const events = [...(await play(hearing, 400, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command" }]);
    expect(recogniser.utterances[0]).toBeLessThan((0.1 + 0.4 + 0.3) * 16_000);
  });

  it("[V17] a grammar that had to wait and is then refused is told", async () => {
    const { hearing, recogniser } = await ear();
    recogniser.willHear("okay kitchen next step");
    await play(hearing, 400, "voice");
    await hearing.listenFor(listenTo({ root: "gone", rules: new Map() }), "after-utterance");
    const events = await play(hearing, 600, "quiet");
    expect(events.at(-1)).toMatchObject({ kind: "grammar-refused" });
  });

  it("[V3] words that are no sentence of the grammar are not acted on", async () => {
    const { hearing, recogniser } = await ear("open");
    recogniser.willHear("step next minute");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 800, "quiet"))).toEqual([{ kind: "none", why: "doubtful" }]);
  });

  it("[V6] the end of the stream ends an open utterance, and a reset forgets it", async () => {
    const { hearing, recogniser } = await ear("open");
    recogniser.willHear("next step");
    await play(hearing, 600, "voice");
    expect(verdicts(await hearing.finish())).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    await play(hearing, 600, "voice");
    await hearing.reset();
    expect(await hearing.finish()).toEqual([]);
  });
});
