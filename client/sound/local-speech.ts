import { speechPieces } from "../../core/sound/speech-pieces.ts";
import type { Playing } from "./audio-output.ts";
import type { Clock } from "./clock.ts";

/** The device's own voice: used only while the bundled one cannot be reached. */
export interface LocalSpeech {
  /** Whether the device has an English voice that works without a network. */
  readonly available: () => boolean;
  readonly speak: (
    text: string,
    options: { readonly rate: number; readonly volume: number },
    onStart: () => void,
  ) => Playing;
}

/** What of the browser is needed; handed in, so that a test plays the browser. */
export interface SpeechEngine {
  readonly synthesis: Pick<SpeechSynthesis, "getVoices" | "speak" | "cancel">;
  readonly utterance: (text: string) => SpeechSynthesisUtterance;
}

/** Some engines fall silent in a longer piece, and never say that they have ended. */
const maxPieceLength = 150;
const startLimitMs = 2_500;
/** Generous for the slowest voice: an ordinary one takes about 65 ms a letter. */
const msPerLetter = 200;

/** The browser's engine, or null where there is none. */
export function browserSpeechEngine(): SpeechEngine | null {
  if (!("speechSynthesis" in globalThis)) return null;
  return { synthesis: speechSynthesis, utterance: (text) => new SpeechSynthesisUtterance(text) };
}

/** Null where the device has no English voice of its own. */
function voiceOf(engine: SpeechEngine | null): SpeechSynthesisVoice | null {
  return (
    engine?.synthesis
      .getVoices()
      .find((one) => one.localService && one.lang.toLowerCase().startsWith("en")) ?? null
  );
}

interface ReadingNeeds {
  readonly engine: SpeechEngine;
  readonly clock: Clock;
  readonly rate: number;
  readonly volume: number;
  readonly onStart: () => void;
}

/** The pieces of one text, one after the other. */
class Reading implements Playing {
  readonly ended: Promise<"ended" | "stopped" | "failed">;
  readonly #needs: ReadingNeeds;
  readonly #pieces: string[];
  #finish: (how: "ended" | "stopped" | "failed") => void = () => undefined;
  #callOff = (): void => undefined;
  #over = false;

  constructor(text: string, needs: ReadingNeeds) {
    this.#needs = needs;
    this.#pieces = [...speechPieces(text, maxPieceLength)];
    this.ended = new Promise((resolve) => {
      this.#finish = resolve;
    });
    this.#next();
  }

  stop(): void {
    this.#close("stopped");
  }

  #next(): void {
    if (this.#over) return;
    const piece = this.#pieces.shift();
    if (piece === undefined) {
      this.#close("ended");
      return;
    }
    const { engine, rate, volume, onStart } = this.#needs;
    const utterance = engine.utterance(piece);
    utterance.voice = voiceOf(engine);
    utterance.rate = rate;
    utterance.volume = volume;
    utterance.onstart = () => {
      if (this.#over) return;
      this.#watch(startLimitMs + piece.length * msPerLetter);
      onStart();
    };
    utterance.onend = () => {
      this.#next();
    };
    utterance.onerror = () => {
      this.#close("failed");
    };
    this.#watch(startLimitMs);
    engine.synthesis.speak(utterance);
  }

  #watch(ms: number): void {
    this.#callOff();
    this.#callOff = this.#needs.clock.after(ms, () => {
      this.#close("failed");
    });
  }

  #close(how: "ended" | "stopped" | "failed"): void {
    if (this.#over) return;
    this.#over = true;
    this.#callOff();
    if (how !== "ended") this.#needs.engine.synthesis.cancel();
    this.#finish(how);
  }
}

const nothingHeard: Playing = { ended: Promise.resolve("failed"), stop: () => undefined };

/**
 * Only voices that work without a network: the others would send the words out of the house. `pause()` is never
 * called, for on several systems nothing wakes the engine again.
 */
export function localSpeech(engine: SpeechEngine | null, clock: Clock): LocalSpeech {
  return {
    available: () => voiceOf(engine) !== null,
    speak: (text, { rate, volume }, onStart) =>
      engine === null ? nothingHeard : new Reading(text, { engine, clock, rate, volume, onStart }),
  };
}
