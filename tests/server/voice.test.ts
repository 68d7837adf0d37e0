import { Worker } from "node:worker_threads";
import { afterAll, describe, expect, it } from "vitest";
import { createVoice } from "../../server/voice/create-voice.ts";
import { maxTextLength, voiceNames } from "../../server/voice/speech-request.ts";
import { startVoiceWorker } from "../../server/voice/voice-thread.ts";

const slt = { voice: "slt", rate: 1 } as const;
const kal16 = { voice: "kal16", rate: 1 } as const;

/** Sample rate, channels, bits and samples of a WAV file with the plain header. */
function readWav(wav: Uint8Array): {
  readonly format: readonly number[];
  readonly samples: Int16Array;
  readonly tags: string;
} {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  const tag = (at: number): string => String.fromCharCode(...wav.subarray(at, at + 4));
  expect(view.getUint32(4, true)).toBe(wav.byteLength - 8);
  expect(view.getUint32(40, true)).toBe(wav.byteLength - 44);
  return {
    tags: [tag(0), tag(8), tag(12), tag(36)].join(),
    format: [
      view.getUint16(20, true),
      view.getUint16(22, true),
      view.getUint32(24, true),
      view.getUint16(34, true),
    ],
    samples: new Int16Array(wav.slice(44).buffer),
  };
}

function loudness(samples: Int16Array): number {
  return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
}

async function spoken(
  voice: ReturnType<typeof createVoice>,
  text: string,
  options: Parameters<typeof voice.speak>[1],
): Promise<Uint8Array> {
  const outcome = await voice.speak(text, options);
  if (!outcome.ok) throw new Error(outcome.error);
  return outcome.value;
}

describe("the bundled voice", () => {
  const voice = createVoice();
  afterAll(() => voice.close());

  it("[S20] a sentence becomes a 16-bit mono WAV file that can be heard", async () => {
    const { tags, format, samples } = readWav(await spoken(voice, "Turn the flatbreads now.", slt));
    expect(tags).toBe("RIFF,WAVE,fmt ,data");
    expect(format).toEqual([1, 1, 16_000, 16]);
    expect(loudness(samples)).toBeGreaterThan(500);
    expect(samples.length / 16_000).toBeGreaterThan(0.8);
  });

  it("[S20] the same words sound different in every voice", async () => {
    const sounds = [];
    for (const name of voiceNames)
      sounds.push(
        Buffer.from(await spoken(voice, "The soup simmers.", { voice: name, rate: 1 })).toString("base64"),
      );
    expect(new Set(sounds).size).toBe(voiceNames.length);
  });

  it("[S21] twice the rate takes about half the time", async () => {
    const length = async (rate: number): Promise<number> =>
      (await spoken(voice, "Cover the pot and wait for ten minutes.", { voice: "kal16", rate })).byteLength;
    const [slow, plain, fast] = [await length(0.5), await length(1), await length(2)];
    expect(slow / plain).toBeGreaterThan(1.7);
    expect(plain / fast).toBeGreaterThan(1.7);
  });

  it("[S22] speech begins within 30 ms of the start of the sound", async () => {
    const { samples } = readWav(await spoken(voice, "Stir the lentils.", slt));
    expect(samples.findIndex((sample) => Math.abs(sample) > 100)).toBeLessThan(0.03 * 16_000);
  });

  it("[S23] twenty sentences in a row are all spoken", async () => {
    for (let i = 1; i <= 20; i += 1) {
      const { samples } = readWav(await spoken(voice, `Stir pot ${i}, then set its lid ajar.`, kal16));
      expect(loudness(samples)).toBeGreaterThan(500);
    }
  });

  it("[S24] a sentence asked for again is the very same sound, and asked for twice at once is made once", async () => {
    const [first, second] = await Promise.all([
      spoken(voice, "Drain the potatoes.", kal16),
      spoken(voice, "Drain the potatoes.", kal16),
    ]);
    expect(second).toBe(first);
    expect(await spoken(voice, "Drain the potatoes.", kal16)).toBe(first);
  });

  it("[S25] what looks like an option of the synthesiser is spoken as words", async () => {
    for (const text of ["-l", "--help", "-voice kal -t x"]) {
      expect(loudness(readWav(await spoken(voice, text, kal16)).samples)).toBeGreaterThan(200);
    }
  });

  it.each([
    ["nothing", "", "There is nothing to say in the text; give at least one word."],
    ["only marks", " …!? 🍅", "There is nothing to say in the text; give at least one word."],
    [
      "ten thousand letters",
      "x".repeat(10_000),
      "The text has 10000 characters, but at most 400 can be spoken at once; split it.",
    ],
    [
      "a bell character",
      "stop\u0007now",
      "The text holds control characters, which cannot be spoken; remove them.",
    ],
    [
      "a zero byte",
      "stop\u0000now",
      "The text holds control characters, which cannot be spoken; remove them.",
    ],
  ])("[S26] %s is refused with a sentence", async (_what, text, sentence) => {
    expect(await voice.speak(text, slt)).toEqual({ ok: false, error: sentence });
  });

  it("[S26] a rate out of bounds, or no number, is refused with a sentence", async () => {
    for (const rate of [0, 0.49, 2.01, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(await voice.speak("Stir.", { voice: "slt", rate })).toEqual({
        ok: false,
        error: "The rate must lie between 0.5 and 2; 1 is the voice's own pace.",
      });
    }
  });

  it("[S26] the longest text allowed is spoken", async () => {
    const text = "stir it now ".repeat(40).slice(0, maxTextLength);
    expect((await spoken(voice, text, kal16)).byteLength).toBeGreaterThan(100_000);
  });
});

describe("a voice in trouble", () => {
  it("[S27] a thread that dies in mid-sentence is started again and the sentence is spoken", async () => {
    const threads: Worker[] = [];
    const voice = createVoice({
      startWorker: () => {
        const next = startVoiceWorker();
        threads.push(next);
        return next;
      },
    });
    await spoken(voice, "First.", kal16);
    const outcome = voice.speak("This one is cut short by the death of the thread.", slt);
    await threads[0]?.terminate();
    expect(
      loudness(readWav(await outcome.then((so) => (so.ok ? so.value : new Uint8Array(44)))).samples),
    ).toBeGreaterThan(500);
    expect(threads.length).toBe(2);
    await voice.close();
  });

  it("[S27] a thread that dies every time is answered with a sentence, and the next sentence is tried afresh", async () => {
    let deaths = 0;
    const dying = (): Worker => {
      deaths += 1;
      return new Worker("process.exit(7)", { eval: true });
    };
    const voice = createVoice({ startWorker: () => (deaths < 2 ? dying() : startVoiceWorker()) });
    const failed = await voice.speak("Stir.", kal16);
    expect(failed).toEqual({
      ok: false,
      error:
        "The voice stopped working in the middle of the sentence; it is started again, so try once more.",
    });
    expect((await voice.speak("Stir.", kal16)).ok).toBe(true);
    await voice.close();
  });

  it("[S28] a synthesiser that hangs is given up after its time limit and replaced", async () => {
    let starts = 0;
    const hanging = (): Worker => new Worker("for (;;);", { eval: true });
    const voice = createVoice({
      startMs: 100,
      sentenceMs: 100,
      startWorker: () => {
        starts += 1;
        return hanging();
      },
    });
    const sentence = "The voice took too long for this sentence; try again, or shorten it.";
    expect(await voice.speak("Stir.", kal16)).toEqual({ ok: false, error: sentence });
    expect(await voice.speak("Wait.", kal16)).toEqual({ ok: false, error: sentence });
    expect(starts).toBe(2);
    await voice.close();
  });

  it("[S28] too many waiting sentences are refused, and closing answers all that wait", async () => {
    const voice = createVoice({
      maxWaiting: 2,
      startWorker: () => new Worker("setInterval(() => {}, 1000)", { eval: true }),
    });
    const waiting = ["One.", "Two.", "Three."].map((text) => voice.speak(text, kal16));
    expect(await voice.speak("Four.", kal16)).toEqual({
      ok: false,
      error: "Too many sentences wait to be spoken; try again in a moment.",
    });
    await voice.close();
    const closed =
      "The voice is switched off because the server is stopping; read the captions on the screen.";
    expect(await Promise.all(waiting)).toEqual(waiting.map(() => ({ ok: false, error: closed })));
    expect(await voice.speak("Five.", kal16)).toEqual({ ok: false, error: closed });
  });

  it("[S29] a sentence that somebody waits for goes before those fetched ahead", async () => {
    const voice = createVoice();
    const order: string[] = [];
    const say = async (text: string, urgency: "now" | "ahead"): Promise<void> => {
      await voice.speak(text, { ...kal16, urgency });
      order.push(text);
    };
    await Promise.all([
      say("One.", "ahead"),
      say("Two.", "ahead"),
      say("Three.", "ahead"),
      say("Answer.", "now"),
    ]);
    expect(order).toEqual(["One.", "Answer.", "Two.", "Three."]);
    await voice.close();
  });
});
