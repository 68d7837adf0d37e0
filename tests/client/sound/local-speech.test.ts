import { expect, it } from "vitest";
import { localSpeech, type SpeechEngine } from "../../../client/sound/local-speech.ts";
import { handClock, settle } from "./fakes.ts";

function engineWith(voices: readonly { readonly lang: string; readonly localService: boolean }[]) {
  const spoken: SpeechSynthesisUtterance[] = [];
  const log: string[] = [];
  const engine: SpeechEngine = {
    synthesis: {
      getVoices: () => voices as SpeechSynthesisVoice[],
      speak: (utterance) => {
        spoken.push(utterance);
        log.push(`speak ${utterance.text.length}`);
      },
      cancel: () => {
        log.push("cancel");
      },
    },
    utterance: (text) => ({ text }) as SpeechSynthesisUtterance,
  };
  const event = {} as SpeechSynthesisEvent;
  const begin = (): void => {
    spoken.at(-1)?.onstart?.call(spoken[0] as SpeechSynthesisUtterance, event);
  };
  const end = (): void => {
    spoken.at(-1)?.onend?.call(spoken[0] as SpeechSynthesisUtterance, event);
  };
  return { engine, log, begin, end };
}
const english = { lang: "en-GB", localService: true };
const plain = { rate: 1, volume: 1 };

it("[S54] only an English voice that needs no network counts", () => {
  expect(localSpeech(null, handClock()).available()).toBe(false);
  expect(
    localSpeech(
      engineWith([
        { lang: "en-US", localService: false },
        { lang: "de-DE", localService: true },
      ]).engine,
      handClock(),
    ).available(),
  ).toBe(false);
  expect(localSpeech(engineWith([english]).engine, handClock()).available()).toBe(true);
});

it("[S54] a long text goes to it in pieces of at most 150 letters, one after the other", async () => {
  const { engine, log, begin, end } = engineWith([english]);
  const playing = localSpeech(engine, handClock()).speak(
    "Stir it slowly. ".repeat(20),
    plain,
    () => undefined,
  );
  for (let i = 0; i < 3; i += 1) {
    begin();
    end();
  }
  expect(await playing.ended).toBe("ended");
  expect(log).toEqual(["speak 143", "speak 143", "speak 31"]);
});

it("[S54] one that does not begin within 2.5 seconds, or never ends, is given up and cancelled", async () => {
  for (const begins of [false, true]) {
    const { engine, log, begin } = engineWith([english]);
    const clock = handClock();
    const playing = localSpeech(engine, clock).speak("Stir.", plain, () => undefined);
    if (begins) begin();
    await clock.turn(begins ? 3_600 : 2_600);
    expect(await playing.ended).toBe("failed");
    expect(log).toEqual(["speak 5", "cancel"]);
  }
});

it("[S54] stopping cancels it, and what the engine says afterwards is ignored", async () => {
  const { engine, log, end } = engineWith([english]);
  const playing = localSpeech(engine, handClock()).speak("Stir it. ".repeat(40), plain, () => undefined);
  playing.stop();
  end();
  await settle();
  expect(await playing.ended).toBe("stopped");
  expect(log.slice(1)).toEqual(["cancel"]);
});
