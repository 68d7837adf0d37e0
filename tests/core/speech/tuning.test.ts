import { describe, expect, it } from "vitest";
import { changeOf, noGrammar } from "../../../core/speech/grammar-change.ts";
import { defaultEndpointer } from "../../../core/speech/endpointer.ts";
import { createHearing, type Hearing } from "../../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../../core/speech/hearing-settings.ts";
import type { HearingEvent } from "../../../core/speech/hearing-event.ts";
import { createJudgingRecogniser } from "../../../core/speech/judging-recogniser.ts";
import { createOffsetFilter } from "../../../core/speech/loudness.ts";
import { frameSamples, listeningRate } from "../../../core/speech/samples.ts";
import { noiseBefore, sentenceLevels } from "../../../core/speech/sentence-levels.ts";
import type { FromRecogniser, ToRecogniser } from "../../../core/speech/recogniser-messages.ts";
import { createRecogniserPump } from "../../../client/workers/recogniser-pump.ts";
import { amplified } from "../../../core/speech/tuning.ts";
import { createFakeWordEngine } from "../../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";
import { activeLevel } from "../../voice/active-level.ts";
import { spokenDry } from "../../voice/spoken-in-room.ts";
import { voices } from "../../voice/synthetic-voices.ts";

const acceptance = { address: 0, addressed: 0, open: 0, stopOnly: 0 };

/** A tone of 760 Hz, in the speech band. */
const tone = (seconds: number, peak: number): Float32Array =>
  Float32Array.from({ length: seconds * listeningRate }, (_, n) => peak * Math.sin(n * 0.3));

async function ear(): Promise<Hearing> {
  const recogniser = createJudgingRecogniser(createFakeWordEngine(), acceptance);
  const hearing = createHearing(
    { recogniser, detector: null },
    { ...defaultHearingTimes, endpointer: defaultEndpointer },
  );
  await hearing.listenFor(listenTo(grammarOf("next step")), "after-utterance");
  return hearing;
}

/** A faint room, a voice in it, the room again. */
async function hear(hearing: Hearing, peak: number): Promise<readonly HearingEvent[]> {
  const room = tone(1, 2e-5);
  return [
    ...(await hearing.accept(room)),
    ...(await hearing.accept(tone(1, peak))),
    ...(await hearing.accept(room)),
  ];
}

const heard = (events: readonly HearingEvent[]) =>
  events.flatMap((event) => (event.kind === "heard" ? [event] : []));

describe("what suits the ear to a cook", () => {
  it("[V87] a gain makes the stream louder; what would go beyond full scale stays there", () => {
    const block = Float32Array.of(0.1, -0.2, 0.6, -0.7);
    expect([...amplified(block, 20 * Math.log10(2))].map((sample) => Math.round(sample * 100) / 100)).toEqual(
      [0.2, -0.4, 1, -1],
    );
    expect(amplified(block, 0)).toBe(block);
  });

  it("[V87] a voice under the limit is heard once gain or limit allow it, and no longer when they are as before", async () => {
    const faint = 4e-4; // -71 dBFS
    const hearing = await ear();
    expect(heard(await hear(hearing, faint))).toHaveLength(0);
    hearing.tune({ gainDb: 20, quietestDb: -62 });
    expect(heard(await hear(hearing, faint))).toHaveLength(1);
    hearing.tune({ gainDb: 0, quietestDb: -74 });
    expect(heard(await hear(hearing, faint))).toHaveLength(1);
    hearing.tune({ gainDb: 0, quietestDb: -62 });
    expect(heard(await hear(hearing, faint))).toHaveLength(0);
  });

  it("[V87] a gain that is set in the middle of a stream begins no utterance of its own", async () => {
    const hearing = await ear();
    const room = tone(2, 8e-4); // -65 dBFS
    await hearing.accept(room);
    hearing.tune({ gainDb: 20, quietestDb: -62 });
    const events = [...(await hearing.accept(room)), ...(await hearing.accept(room))];
    expect(events.filter(({ kind }) => kind === "speech-started")).toEqual([]);
    const levels = events.flatMap((event) => (event.kind === "level" ? [Math.round(event.dbfs)] : []));
    expect(new Set(levels)).toEqual(new Set([-45]));
  });

  it("[V87] the tuning outlives the stream", async () => {
    const hearing = await ear();
    hearing.tune({ gainDb: 20, quietestDb: -62 });
    await hearing.reset();
    expect(heard(await hear(hearing, 4e-4))).toHaveLength(1);
  });
});

describe("the worker", () => {
  /** What it tells of a faint voice, having been told these things round the loading of the engine. */
  async function told(
    before: readonly ToRecogniser[],
    after: readonly ToRecogniser[],
  ): Promise<readonly FromRecogniser[]> {
    const posted: FromRecogniser[] = [];
    const take = createRecogniserPump({
      createRecogniser: () => createJudgingRecogniser(createFakeWordEngine(), acceptance),
      loadDetector: () => Promise.resolve(null),
      post: (message) => posted.push(message),
    });
    const { grammar, ...how } = listenTo(grammarOf("next step"));
    for (const message of [...before, { kind: "load", base: "/" } as const, ...after]) take(message);
    take({ kind: "grammar", change: changeOf(noGrammar, grammar) });
    take({ kind: "listen-for", how, when: "after-utterance" });
    for (const peak of [2e-5, 4e-4, 2e-5])
      take({ kind: "audio", samples: tone(1, peak), rate: listeningRate });
    await expect.poll(() => posted.filter(({ kind }) => kind === "room").length).toBe(3);
    return posted;
  }
  const hears = async (before: readonly ToRecogniser[], after: readonly ToRecogniser[]): Promise<boolean> =>
    (await told(before, after)).some(({ kind }) => kind === "heard");
  const tune: ToRecogniser = { kind: "tune", tuning: { gainDb: 20, quietestDb: -62 } };

  it("[V82] tells how long ago an utterance began, by the sound that came since, heard already or not", async () => {
    const heard = (await told([tune], [])).find(({ kind }) => kind === "heard");
    // The second with the voice, a second in which it ended, and the lead of an utterance; all was given at once.
    expect(heard).toMatchObject({ beganAgoMs: expect.closeTo(2_700, -3) as number });
  });

  it("[V87] tunes an engine that it was told of before or after it has loaded, and after a new stream", async () => {
    expect(await hears([], [])).toBe(false);
    expect(await hears([tune], [])).toBe(true);
    expect(await hears([], [tune, { kind: "reset" }])).toBe(true);
  });
});

describe("how a sentence sounded", () => {
  it("[V88] an utterance tells the level of its voice, its loudest sample and the room before it", async () => {
    const [one] = heard(await hear(await ear(), 0.1));
    // A sine of peak 0.1: -20 dBFS at its peak, 3 dB less in its power; the room's tone lies 74 dB below it.
    expect(one?.levels?.peakDb).toBeCloseTo(-20, 0);
    expect(one?.levels?.voiceDb).toBeCloseTo(-23, 0);
    expect(one?.levels?.bandDb).toBeCloseTo(-23, 0);
    expect(one?.levels?.noiseDb).toBeLessThan(-85);
  });

  it.each(voices)(
    "[V88] %s: within 2 dB of the active level of ITU-T P.56, pauses left out",
    async (voice) => {
      const dry = await spokenDry(voice, "listen kitchen, set a timer for fifteen minutes");
      const sound = createOffsetFilter(listeningRate)(dry);
      const frames = Array.from({ length: Math.floor(sound.length / frameSamples) }, (_, at) =>
        sound.subarray(at * frameSamples, (at + 1) * frameSamples),
      );
      const levels = sentenceLevels(frames, null);
      expect(Math.abs((levels?.voiceDb ?? 0) - activeLevel(sound))).toBeLessThan(2);
    },
  );

  it("[V88] digital silence has no level, and a moment too short says nothing of the room", () => {
    expect(sentenceLevels([new Float32Array(frameSamples)], null)).toBeNull();
    const recent = Array.from({ length: 9 }, () => ({ levelDb: -50, voice: null }));
    const state = { phase: { kind: "quiet" }, frame: 9, recent } as const;
    expect(noiseBefore(state, 9)).toBeNull();
    const longer = { ...state, frame: 20, recent: [...recent, ...recent, ...recent].slice(0, 20) };
    expect(noiseBefore(longer, 15)).toBe(-50);
    expect(noiseBefore(longer, 5)).toBeNull();
  });
});
