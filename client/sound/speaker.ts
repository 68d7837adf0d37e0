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

/** The ways to speak, in the order in which they are tried, and what is told of it. */
export interface SpeakerNeeds {
  readonly output: AudioOutput;
  readonly source: SpeechSource;
  readonly local: LocalSpeech;
  readonly clock: Clock;
  /** At the first sample of each sound. */
  readonly onSound: () => void;
  /** One sentence, once for each trouble. */
  readonly onNotice: (sentence: string) => void;
}

/** What was told last, so that it is not told with every sentence. */
interface Told {
  notice: keyof typeof notices | null;
}

class Attempt implements Speaking {
  readonly ended: Promise<UtteranceEnd>;
  readonly #needs: SpeakerNeeds;
  readonly #told: Told;
  readonly #utterance: Utterance;
  #playing: Playing | null = null;
  #isCut = false;
  #wake = (): void => undefined;

  constructor(needs: SpeakerNeeds, told: Told, utterance: Utterance) {
    this.#needs = needs;
    this.#told = told;
    this.#utterance = utterance;
    this.ended = this.#run();
  }

  cut(): void {
    this.#isCut = true;
    this.#playing?.stop();
    this.#wake();
  }

  async #run(): Promise<UtteranceEnd> {
    const heard = (await this.#sound()) || this.#wasCut();
    if (!heard) await this.#read();
    if (this.#wasCut()) return "cut";
    return heard ? "said" : "shown";
  }

  /** A method, for the compiler thinks that a field cannot change while a promise is awaited. */
  #wasCut(): boolean {
    return this.#isCut;
  }

  async #sound(): Promise<boolean> {
    const { output, local, onSound } = this.#needs;
    const state = output.state();
    if (state !== "ready") return this.#tell(state);
    if (await this.#bundled()) {
      this.#told.notice = null;
      return true;
    }
    if (this.#wasCut()) return false;
    if (local.available() && (await this.#hear(local.speak(this.#utterance.text, this.#utterance, onSound))))
      return true;
    return this.#wasCut() ? false : this.#tell("silent");
  }

  async #bundled(): Promise<boolean> {
    const { text, rate, volume } = this.#utterance;
    for (const piece of speechPieces(text, maxPieceLength)) {
      const wav = await this.#needs.source.get(piece, rate);
      if (this.#wasCut() || !wav.ok) return false;
      if (!(await this.#hear(this.#needs.output.playSpeech(wav.value, volume, this.#needs.onSound))))
        return false;
    }
    return true;
  }

  async #hear(playing: Playing): Promise<boolean> {
    this.#playing = playing;
    return (await playing.ended) === "ended";
  }

  #read(): Promise<void> {
    return new Promise((resolve) => {
      const callOff = this.#needs.clock.after(readingMs(this.#utterance.text), resolve);
      this.#wake = () => {
        callOff();
        resolve();
      };
    });
  }

  #tell(what: keyof typeof notices): false {
    if (this.#told.notice !== what) this.#needs.onNotice(notices[what]);
    this.#told.notice = what;
    return false;
  }
}

/**
 * Speaks one text by the first way that works: the bundled voice, the device's own, or the caption alone, kept up
 * as long as it takes to read.
 */
export function createSpeaker(needs: SpeakerNeeds): (utterance: Utterance) => Speaking {
  const told: Told = { notice: null };
  return (utterance) => new Attempt(needs, told, utterance);
}
