import { speechPieces } from "../../core/sound/speech-pieces.ts";
import type { Playing } from "./audio-output.ts";
import type { Clock } from "./clock.ts";

/** The device's own voice: used only while the bundled one cannot be reached. */
export interface LocalSpeech {
  /** Whether the device has an English voice that works without a network. */
  readonly available: () => boolean;
  readonly speak: (text: string, options: { readonly rate: number; readonly volume: number }, onStart: () => void) => Playing;
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

/**
 * Only voices that work without a network: the others would send the words out of the house. `pause()` is never
 * called, for on several systems nothing wakes the engine again.
 */
export function localSpeech(engine: SpeechEngine | null, clock: Clock): LocalSpeech {
  const voice = (): SpeechSynthesisVoice | undefined =>
    engine?.synthesis.getVoices().find((one) => one.localService && one.lang.toLowerCase().startsWith("en"));

  return {
    available: () => voice() !== undefined,
    speak: (text, options, onStart) => {
      const pieces = [...speechPieces(text, maxPieceLength)];
      let finish: (how: "ended" | "stopped" | "failed") => void = () => undefined;
      const ended = new Promise<"ended" | "stopped" | "failed">((resolve) => { finish = resolve; });
      let over = false;
      let callOff = (): void => undefined;
      const close = (how: "ended" | "stopped" | "failed"): void => {
        if (over) return;
        over = true;
        callOff();
        if (how !== "ended") engine?.synthesis.cancel();
        finish(how);
      };
      const watch = (ms: number): void => {
        callOff();
        callOff = clock.after(ms, () => { close("failed"); });
      };
      const next = (): void => {
        const piece = pieces.shift();
        const chosen = voice();
        if (over) return;
        if (piece === undefined) { close("ended"); return; }
        if (engine === null || chosen === undefined) { close("failed"); return; }
        const utterance = engine.utterance(piece);
        utterance.voice = chosen;
        utterance.rate = options.rate;
        utterance.volume = options.volume;
        utterance.onstart = () => { if (!over) { watch(startLimitMs + piece.length * msPerLetter); onStart(); } };
        utterance.onend = next;
        utterance.onerror = () => { close("failed"); };
        watch(startLimitMs);
        engine.synthesis.speak(utterance);
      };
      next();
      return { ended, stop: () => { close("stopped"); } };
    },
  };
}
