import { readingMs, speechPieces } from "../../core/sound/speech-pieces.ts";
import type { AudioOutput, Playing } from "./audio-output.ts";
import type { Clock } from "./clock.ts";
import type { LocalSpeech } from "./local-speech.ts";
import type { SpeechSource } from "./speech-source.ts";

/** In characters, under the server's limit of 400; a breath is 150. */
const maxPieceLength = 380;

/** One text to be spoken once. */
export interface Utterance {
  readonly text: string;
  readonly rate: number;
  /** 0 to 1. */
  readonly volume: number;
}

/** `said` was heard, `shown` could only be read, `cut` was stopped. */
export type UtteranceEnd = "said" | "shown" | "cut";

/** An utterance under way. */
export interface Speaking {
  readonly ended: Promise<UtteranceEnd>;
  readonly cut: () => void;
}

const notices = {
  locked: "This screen may not make a sound yet; tap it once.",
  unavailable: "This browser cannot play sound; read here what I would say.",
  silent: "The voice cannot be reached and this device has none of its own; read here what I would say.",
} as const;

/**
 * Speaks one text by the first way that works: the bundled voice, the device's own, or the caption alone, kept up
 * as long as it takes to read.
 * @param events.onSound at the first sample @param events.onNotice one sentence, once for each trouble
 */
export function createSpeaker(
  ways: { readonly output: AudioOutput; readonly source: SpeechSource; readonly local: LocalSpeech; readonly clock: Clock },
  events: { readonly onSound: () => void; readonly onNotice: (sentence: string) => void },
): (utterance: Utterance) => Speaking {
  const { output, source, local, clock } = ways;
  let told: keyof typeof notices | null = null;
  const tell = (what: keyof typeof notices): void => {
    if (told !== what) events.onNotice(notices[what]);
    told = what;
  };

  return ({ text, rate, volume }) => {
    let playing: Playing | null = null;
    let isCut = false;
    let wake = (): void => undefined;
    const hear = async (next: Playing): Promise<boolean> => {
      playing = next;
      return (await next.ended) !== "failed";
    };
    const read = (): Promise<void> =>
      new Promise((resolve) => {
        const callOff = clock.after(readingMs(text), resolve);
        wake = () => { callOff(); resolve(); };
      });
    const bundled = async (): Promise<boolean> => {
      for (const piece of speechPieces(text, maxPieceLength)) {
        const wav = await source.get(piece, rate);
        if (isCut) return true;
        if (!wav.ok || !(await hear(output.playSpeech(wav.value, volume, events.onSound)))) return false;
      }
      return true;
    };
    /** True once the text has been heard, or nobody wants it any more. */
    const sound = async (): Promise<boolean> => {
      const state = output.state();
      if (state !== "ready") { tell(state); return false; }
      if (await bundled()) { told = null; return true; }
      if (isCut) return true;
      if (local.available() && (await hear(local.speak(text, { rate, volume }, events.onSound)))) return true;
      if (!isCut) tell("silent");
      return false;
    };
    const run = async (): Promise<UtteranceEnd> => {
      const heard = await sound();
      if (isCut) return "cut";
      if (heard) return "said";
      await read();
      // `cut` may have been called while the caption stood.
      return (isCut as boolean) ? "cut" : "shown";
    };
    return {
      ended: run(),
      cut: () => {
        isCut = true;
        playing?.stop();
        wake();
      },
    };
  };
}
