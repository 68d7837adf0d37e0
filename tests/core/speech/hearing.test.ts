import { describe, expect, it } from "vitest";
import { defaultEndpointer } from "../../../core/speech/endpointer.ts";
import { createHearing, type Hearing } from "../../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../../core/speech/hearing-settings.ts";
import type { HearingEvent } from "../../../core/speech/hearing-event.ts";
import { createJudgingRecogniser } from "../../../core/speech/judging-recogniser.ts";
import type { Recogniser } from "../../../core/speech/recogniser.ts";
import { createFakeWordEngine } from "../../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";

const grammar = grammarOf("next step", "set a timer", "set a timer for one minute");
const settings = { ...defaultHearingTimes, endpointer: defaultEndpointer };
const acceptance = { address: 0, addressed: 0, open: 0, stopOnly: 0 };

/** How loud they are, as the peak of a tone. */
const loud = { voice: 0.14, "softer voice": 0.035 } as const;

/** A tone at -20 dBFS, a softer one, or a faint hiss, in blocks as a microphone gives them. */
async function play(
  hearing: Hearing,
  ms: number,
  kind: keyof typeof loud | "quiet",
): Promise<readonly HearingEvent[]> {
  const events: HearingEvent[] = [];
  for (let at = 0; at < ms / 40; at++) {
    const block = Float32Array.from({ length: 640 }, (_, n) =>
      kind === "quiet" ? 1e-4 * Math.sin(n * 1.7) : loud[kind] * Math.sin(n * 0.3),
    );
    events.push(...(await hearing.accept(block)).filter(({ kind }) => kind !== "level" && kind !== "room"));
  }
  return events;
}

async function ear(mode: "addressed" | "open" = "addressed") {
  const engine = createFakeWordEngine();
  const recogniser = createJudgingRecogniser(engine, acceptance);
  const hearing = createHearing({ recogniser, detector: null }, settings);
  await hearing.listenFor(listenTo(grammar, { address: "listen kitchen", mode }), "after-utterance");
  await play(hearing, 800, "quiet");
  return { engine, hearing };
}

const verdicts = (events: readonly HearingEvent[]) =>
  events.flatMap((event) => (event.kind === "heard" ? [event.verdict] : []));

describe("hearing", () => {
  it("[V6] an utterance begins with its pre-roll and comes to one verdict", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("<sil> listen kitchen next step");
    const events = [...(await play(hearing, 800, "voice")), ...(await play(hearing, 600, "quiet"))];
    expect(events.map(({ kind }) => kind)).toEqual(["speech-started", "partial", "heard"]);
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"], addressed: true }]);
    expect(engine.utterances[0]).toBeGreaterThan((0.8 + 0.3) * 16_000);
  });

  it.each([
    ["listen kitchen next step", 200],
    ["listen kitchen set a timer", 250],
    ["listen kitchen", 500],
    ["listen kitchen set a timer for", 900],
  ])("[V8] %j is waited for %i ms", async (text, hangoverMs) => {
    const { hearing, engine } = await ear();
    engine.willHear(text);
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, hangoverMs - 80, "quiet"))).toEqual([]);
    expect(verdicts(await play(hearing, 160, "quiet"))).toHaveLength(1);
  });

  it.each([
    ["60 ms into a pause", 1200, 40],
    ["140 ms into a pause where little more than the address can have been said", 400, 120],
  ])(
    "[V8] thinking begins %s, once, is given up where somebody speaks on, and the end is told the pause",
    async (_when, spokenMs, notYetMs) => {
      const engine = createFakeWordEngine();
      const plain = createJudgingRecogniser(engine, acceptance);
      const asked: (readonly [what: string, pause: number | null])[] = [];
      const recogniser: Recogniser = {
        ...plain,
        anticipate: (pause) => {
          asked.push(["anticipate", pause]);
          return plain.anticipate(pause);
        },
        goOn: () => asked.push(["go on", null]),
        end: (pause) => {
          asked.push(["end", pause]);
          return plain.end(pause);
        },
      };
      const hearing = createHearing({ recogniser, detector: null }, settings);
      await hearing.listenFor(listenTo(grammar), "after-utterance");
      await play(hearing, 800, "quiet");
      engine.willHear("next step");
      await play(hearing, spokenMs, "voice");
      await play(hearing, notYetMs, "quiet");
      expect(asked).toEqual([]);
      await play(hearing, 40, "quiet");
      expect(asked.length).toBeGreaterThan(0);
      await play(hearing, 600, "voice");
      await play(hearing, 600, "quiet");
      const [first = NaN, none, second = NaN, ...more] = [...new Set(asked.map(([, pause]) => pause ?? -1))];
      expect([none, more]).toEqual([-1, []]);
      expect(second - first).toBeGreaterThan(600 / 20);
      expect(asked.filter(([what]) => what === "go on")).toHaveLength(1);
      expect(asked.at(-1)).toEqual(["end", second]);
      await play(hearing, 400, "voice");
      await hearing.finish();
      expect(asked.at(-1)).toEqual(["end", null]);
    },
  );

  it("[V73] the recogniser is told where a louder voice began, and the pause after it ends the utterance", async () => {
    const engine = createFakeWordEngine();
    const begun: number[] = [];
    const recogniser: Recogniser = {
      ...createJudgingRecogniser(engine, acceptance),
      mayBegin: (samplesAgo) => begun.push(samplesAgo / 16),
    };
    const detector = {
      hear: () => Promise.resolve(0.9),
      forget: () => undefined,
      free: () => Promise.resolve(),
    };
    const hearing = createHearing({ recogniser, detector }, settings);
    await hearing.listenFor(listenTo(grammar, { address: "listen kitchen" }), "after-utterance");
    hearing.handOut("maybe-misheard");
    await play(hearing, 2000, "softer voice");
    expect(begun).toEqual([]);
    engine.willHear("listen kitchen next step");
    await play(hearing, 800, "voice");
    expect(begun).toEqual([460]);
    const [heard] = (await play(hearing, 400, "softer voice")).filter(({ kind }) => kind === "heard");
    expect(heard).toMatchObject({ startedAtFrame: 0, endedAtFrame: 139 });
    if (heard?.kind !== "heard") return;
    expect(heard.levels?.peakDb).toBeCloseTo(20 * Math.log10(0.14), 0);
    // What the others said before is not handed out with it.
    expect((heard.sound?.samples.length ?? 0) / 16).toBeLessThan(460 + 800 + 400);
  });

  it("[V12] the address alone is held, and its sound comes before the command that follows", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("listen kitchen");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 1500, "quiet"))).toEqual([{ kind: "address-only" }]);
    engine.willHear("listen kitchen next step");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 600, "quiet"))).toMatchObject([
      { kind: "command", words: ["next", "step"] },
    ]);
    const [address = 0, both = 0] = engine.utterances;
    expect(both).toBeGreaterThan(address + 0.6 * 16_000);
  });

  it("[V12] after four seconds the address is forgotten", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("listen kitchen");
    await play(hearing, 600, "voice");
    await play(hearing, 5000, "quiet");
    await play(hearing, 600, "voice");
    await play(hearing, 600, "quiet");
    expect(Math.abs((engine.utterances[1] ?? 0) - (engine.utterances[0] ?? 0))).toBeLessThan(1600);
  });

  it("[V17] a grammar that changes inside an utterance waits for its end", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("listen kitchen next step");
    await play(hearing, 400, "voice");
    await hearing.listenFor(listenTo(grammarOf("louder")), "after-utterance");
    expect(engine.asked).toHaveLength(1);
    expect(verdicts(await play(hearing, 600, "quiet"))).toMatchObject([{ kind: "command" }]);
    expect(engine.asked[1]?.mode).toBe("open");
  });

  it("[V17] a bare sentence that the caller speaks into is heard anew by the stricter rules", async () => {
    const { hearing, engine } = await ear("open");
    engine.willHear("next step");
    await play(hearing, 400, "voice");
    const muted = { address: "listen kitchen", mode: "stop-only", stopSentences: ["stop"] } as const;
    await hearing.listenFor(listenTo(grammar, muted), { keepMs: 15_000 });
    const events = [...(await play(hearing, 200, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toEqual([{ kind: "none", why: "doubtful" }]);
    const [before = 0, anew = 0] = engine.utterances;
    expect(anew).toBeGreaterThan(before);
  });

  it("[V17] a sentence that began with the address is let end, whoever speaks into it", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("listen kitchen next step");
    await play(hearing, 400, "voice");
    const muted = { address: "listen kitchen", mode: "stop-only", stopSentences: ["stop"] } as const;
    await hearing.listenFor(listenTo(grammar, muted), { keepMs: 15_000 });
    const events = [...(await play(hearing, 200, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    expect(engine.asked.map(({ mode }) => mode)).toEqual(["addressed", "stop-only"]);
  });

  it("[V22] what began while the caller fell silent is heard anew as an answer, without the caller's words", async () => {
    const { hearing, engine } = await ear();
    await hearing.listenFor(listenTo(grammar, { mode: "stop-only" }), { keepMs: 15_000 });
    await play(hearing, 2000, "softer voice");
    engine.willHear("next step");
    await hearing.listenFor(listenTo(grammar), { keepMs: 300 });
    const events = [...(await play(hearing, 400, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    // 300 ms kept, 400 ms spoken after, and the quiet that ends it: nothing of the two seconds before.
    expect(engine.utterances.at(-1)).toBeLessThan(1.1 * 16_000);
  });

  it("[V77] what the walls give back of the caller's last word is no answer", async () => {
    const { hearing, engine } = await ear();
    await hearing.listenFor(listenTo(grammar, { mode: "stop-only" }), { keepMs: 15_000 });
    await play(hearing, 2000, "voice");
    engine.willHear("next step");
    await hearing.listenFor(listenTo(grammar), { keepMs: 300 });
    const events = [...(await play(hearing, 40, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toEqual([{ kind: "none", why: "chatter" }]);
    engine.willHear("next step");
    await play(hearing, 400, "voice");
    expect(verdicts(await play(hearing, 800, "quiet"))).toMatchObject([{ kind: "command" }]);
  });

  it("[V22] a beginning just after the caller's end takes nothing of it into its pre-roll", async () => {
    const { hearing, engine } = await ear();
    await play(hearing, 1000, "quiet");
    await hearing.listenFor(listenTo(grammar), { keepMs: 100 });
    engine.willHear("next step");
    const events = [...(await play(hearing, 400, "voice")), ...(await play(hearing, 800, "quiet"))];
    expect(verdicts(events)).toMatchObject([{ kind: "command" }]);
    expect(engine.utterances[0]).toBeLessThan((0.1 + 0.4 + 0.3) * 16_000);
  });

  it("[V17] a grammar that had to wait and is then refused is told", async () => {
    const { hearing, engine } = await ear();
    engine.willHear("listen kitchen next step");
    await play(hearing, 400, "voice");
    await hearing.listenFor(listenTo({ root: "gone", rules: new Map() }), "after-utterance");
    const events = await play(hearing, 600, "quiet");
    expect(events.at(-1)).toMatchObject({ kind: "grammar-refused" });
  });

  it("[V3] words that are no sentence of the grammar are not acted on", async () => {
    const { hearing, engine } = await ear("open");
    engine.willHear("step next minute");
    await play(hearing, 600, "voice");
    expect(verdicts(await play(hearing, 800, "quiet"))).toEqual([{ kind: "none", why: "doubtful" }]);
  });

  it("[V6] the end of the stream ends an open utterance, and a reset forgets it", async () => {
    const { hearing, engine } = await ear("open");
    engine.willHear("next step");
    await play(hearing, 600, "voice");
    expect(verdicts(await hearing.finish())).toMatchObject([{ kind: "command", words: ["next", "step"] }]);
    await play(hearing, 600, "voice");
    await hearing.reset();
    expect(await hearing.finish()).toEqual([]);
  });
});
