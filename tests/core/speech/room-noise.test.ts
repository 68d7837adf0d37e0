import { describe, expect, it } from "vitest";
import { createCookLevel } from "../../../core/speech/cook-level.ts";
import { defaultEndpointer } from "../../../core/speech/endpointer.ts";
import { createHearing } from "../../../core/speech/hearing.ts";
import { defaultHearingTimes } from "../../../core/speech/hearing-settings.ts";
import { createJudgingRecogniser } from "../../../core/speech/judging-recogniser.ts";
import {
  senseRoom,
  typicalSpeechDb,
  unknownRoom,
  type RoomNoise,
  type RoomSense,
} from "../../../core/speech/room-noise.ts";
import { createFakeWordEngine } from "../../voice/fake-word-engine.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";
import { makeNoise, seeds } from "../../voice/noises.ts";

/** What the room is taken for after each second, by the floor of each. */
function after(floors: readonly number[], speechDb: number | null = -25): readonly RoomNoise[] {
  let sense: RoomSense = unknownRoom;
  return floors.map((floorDb) => (sense = senseRoom(sense, { floorDb, speechDb })).noise);
}

const seconds = (count: number, floorDb: number): readonly number[] =>
  Array.from({ length: count }, () => floorDb);

describe("how loud the room is", () => {
  it("[V60] three seconds make a sign, and five take it away", () => {
    expect(after([...seconds(2, -60), ...seconds(4, -24), ...seconds(6, -60)])).toEqual([
      ...["quiet", "quiet", "quiet", "quiet", "too-loud", "too-loud"],
      ...["too-loud", "too-loud", "too-loud", "too-loud", "quiet", "quiet"],
    ]);
  });

  it("[V60] a clatter of a second or two changes nothing, and neither does a second's peace under a tap", () => {
    expect(new Set(after([-60, -60, -20, -20, -60, -60, -20, -60]))).toEqual(new Set(["quiet"]));
    expect(new Set(after([...seconds(3, -22), -60, -22, -60, -60, -22]).slice(2))).toEqual(
      new Set(["too-loud"]),
    );
  });

  it("[V60] a room that hovers between loud and too loud does not flicker", () => {
    const hovering = Array.from({ length: 40 }, (_, at) => (at % 2 === 0 ? -28 : -30));
    const shown = after(hovering);
    expect(new Set(shown.slice(2))).toEqual(new Set(["loud"]));
    expect(after([...seconds(3, -28), ...hovering]).slice(3)).toEqual(hovering.map(() => "too-loud"));
  });

  it.each([
    [-60, "quiet"],
    [-36, "quiet"],
    [-34, "loud"],
    [-30, "loud"],
    [-28, "too-loud"],
    [-10, "too-loud"],
  ] as const)("[V61] under a voice at -25 dBFS a floor of %i dBFS is %s", (floorDb, noise) => {
    expect(after(seconds(3, floorDb)).at(-1)).toBe(noise);
  });

  it("[V61] before a sentence was accepted the voice is taken for a typical one, and a soft voice makes no noise", () => {
    const floor = typicalSpeechDb - 3;
    expect(after(seconds(3, floor), null).at(-1)).toBe("too-loud");
    expect(after(seconds(3, floor), typicalSpeechDb + 9).at(-1)).toBe("quiet");
    expect(after(seconds(3, -58), -59).at(-1)).toBe("quiet");
  });

  it("[V61] the seconds that it has been too loud are counted, from none in each spell", () => {
    let sense: RoomSense = unknownRoom;
    const counts = [...seconds(5, -20), ...seconds(5, -60), ...seconds(4, -20)].map(
      (floorDb) => (sense = senseRoom(sense, { floorDb, speechDb: -25 })).tooLoudS,
    );
    expect(counts).toEqual([0, 0, 1, 2, 3, 4, 5, 6, 7, 0, 0, 0, 1, 2]);
  });
});

describe("how loud the cook is", () => {
  it("[V62] only accepted sentences teach it, each by the median of its loud frames, the last five", () => {
    const cook = createCookLevel();
    const sentence = (levels: readonly number[], was: "accepted" | "refused" = "accepted"): void => {
      for (const level of levels) cook.hear(level);
      cook.endSentence(was);
    };
    expect(cook.levelDb()).toBeNull();
    sentence([-10, -10, -10], "refused");
    sentence([]);
    expect(cook.levelDb()).toBeNull();
    sentence([-40, -20, -22]);
    expect(cook.levelDb()).toBe(-22);
    for (const level of [-30, -30, -31, -32, -33]) sentence([level]);
    expect(cook.levelDb()).toBe(-31);
  });
});

describe("the room in what is heard", () => {
  async function ear() {
    const engine = createFakeWordEngine();
    const recogniser = createJudgingRecogniser(engine, { address: 0, addressed: 0, open: 0, stopOnly: 0 });
    const hearing = createHearing(
      { recogniser, detector: null },
      { ...defaultHearingTimes, endpointer: defaultEndpointer },
    );
    await hearing.listenFor(listenTo(grammarOf("next step")), "after-utterance");
    const rooms = async (samples: Float32Array) =>
      (await hearing.accept(samples)).flatMap((event) => (event.kind === "room" ? [event] : []));
    return { engine, hearing, rooms };
  }
  const tone = (seconds: number, peak: number): Float32Array =>
    Float32Array.from({ length: seconds * 16_000 }, (_, at) => peak * Math.sin(at * 0.3));

  it("[V63] each second comes once, with the floor of that second alone, and the voice once it is known", async () => {
    const { engine, hearing, rooms } = await ear();
    const quiet = await rooms(tone(3, 0.001));
    expect(quiet.map(({ speechDb }) => speechDb)).toEqual([null, null, null]);
    engine.willHear("next step");
    const spoken = await rooms(new Float32Array([...tone(1, 0.14), ...tone(2, 0.001)]));
    expect(spoken).toHaveLength(3);
    // A sine of 0.14 at peak is 20 log10(0.14) - 3.01 = -20.1 dBFS, from the definition of RMS.
    expect(spoken.at(-1)?.speechDb).toBeCloseTo(-20.1, 0);
    expect(spoken.at(-1)?.floorDb).toBeCloseTo(-63, 0);
    await hearing.reset();
    expect((await rooms(tone(1, 0.001))).map(({ speechDb }) => speechDb)).toEqual([null]);
  });

  it.each([
    ["running tap", "too-loud"],
    ["extractor fan", "too-loud"],
    ["clatter", "quiet"],
  ] as const)("[V64] a %s as loud as a typical voice is %s", async (kind, noise) => {
    const { rooms } = await ear();
    const sound = makeNoise(kind, 12, seeds.check[0]);
    const heard = await rooms(sound);
    let sense: RoomSense = unknownRoom;
    for (const { floorDb } of heard) sense = senseRoom(sense, { floorDb, speechDb: null });
    expect(heard).toHaveLength(12);
    expect(sense.noise).toBe(noise);
  });
});
