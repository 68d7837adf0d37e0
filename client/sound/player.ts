import { earcon, type Earcon } from "../../core/sound/chime.ts";
import { renderChime } from "../../core/sound/render-chime.ts";
import type { AudioOutput, AudioState } from "./audio-output.ts";
import { systemClock, type Clock } from "./clock.ts";
import type { FetchSpeech } from "./fetch-speech.ts";
import { createJournal, type JournalEntry } from "./journal.ts";
import { browserSpeechEngine, localSpeech, type LocalSpeech } from "./local-speech.ts";
import { createRinger, type Ringer } from "./ringer.ts";
import { createSpeaker } from "./speaker.ts";
import {
  rateSteps,
  speakingGate,
  stepper,
  volumeSteps,
  type Setting,
  type SpeakingGate,
} from "./settings.ts";
import type { Priority } from "./speech-queue.ts";
import { speechSource, type SpeechSource } from "./speech-source.ts";
import { createTalker, type SayEnd, type Talker } from "./talker.ts";

/** What is said, in writing. The same sentence said again after a cut keeps its id. A notice speaks of sound itself. */
export interface Caption {
  readonly id: number;
  readonly kind: "speech" | "notice";
  readonly text: string;
  readonly priority: Priority;
  /** Epoch milliseconds. */
  readonly at: number;
}

/** What the sound layer needs; all but the first four have defaults for a browser. */
export interface SoundNeeds {
  readonly output: AudioOutput;
  readonly fetchSpeech: FetchSpeech;
  readonly onCaption: (caption: Caption) => void;
  /** "start" at the first sound; "end" 300 ms after the last, when the room's echo is gone. */
  readonly onSpeaking: (edge: "start" | "end") => void;
  /** Waited for before each text: nobody is talked over. */
  readonly floor?: () => Promise<void>;
  readonly local?: LocalSpeech;
  readonly clock?: Clock;
}

/** How one text is said; the priority is "cue" unless given. */
export interface SayOptions {
  readonly priority?: Priority;
  /** In place of the set rate; 1 is the voice's own pace. */
  readonly rate?: number;
  /** 0 to 1, on top of the set volume. */
  readonly volume?: number;
}

/** The kitchen's sound: the voice, the rings and the short signals. */
export interface Sound {
  readonly say: (text: string, options?: SayOptions) => Promise<SayEnd>;
  /** Ends what is being said and forgets what waits. Rings go on. */
  readonly stopTalking: () => void;
  readonly prefetch: (texts: readonly string[]) => void;
  /** Another voice speaks, or says things otherwise, from the next sentence on. */
  readonly revoice: () => void;
  readonly isSpeaking: () => boolean;
  readonly louder: () => Setting;
  readonly softer: () => Setting;
  readonly slower: () => Setting;
  readonly faster: () => Setting;
  readonly signal: (kind: Earcon) => void;
  /** Rings until stopped, louder after 20 and 40 s. @param atEpochMs of the first stroke; now unless given */
  readonly ring: (timerId: string, chimeIndex: number, round: number, atEpochMs?: number) => void;
  readonly stopRing: (timerId: string) => void;
  readonly stopAllRings: () => void;
  readonly ringing: () => readonly string[];
  /** Call it from every tap until the state is "ready". */
  readonly unlock: () => Promise<AudioState>;
  readonly audioState: () => AudioState;
  readonly onAudioState: (listener: (state: AudioState) => void) => () => void;
  readonly journal: () => readonly JournalEntry[];
}

const silentRing = "A timer rings, but this screen may not make a sound yet; tap it once.";

class KitchenSound implements Sound {
  readonly #needs: SoundNeeds;
  readonly #clock: Clock;
  readonly #journal = createJournal();
  readonly #ringer: Ringer;
  readonly #source: SpeechSource;
  readonly #talker: Talker;
  readonly #gate: SpeakingGate;
  readonly #volume = stepper(volumeSteps, 3, (value) => {
    this.#ringer.volume(value);
  });
  readonly #rate = stepper(rateSteps, 2, () => undefined);
  #lastId = 0;

  constructor(needs: SoundNeeds) {
    const { output, clock = systemClock } = needs;
    this.#needs = needs;
    this.#clock = clock;
    this.#ringer = createRinger(output, clock, this.#journal);
    this.#ringer.volume(this.#volume.value());
    this.#source = speechSource(needs.fetchSpeech, clock);
    this.#gate = speakingGate(clock, (edge) => {
      this.#ringer.duck(edge === "start" ? "down" : "up");
      needs.onSpeaking(edge);
    });
    this.#talker = createTalker({
      clock,
      journal: this.#journal,
      floor: needs.floor ?? (() => Promise.resolve()),
      speak: createSpeaker({
        output,
        clock,
        source: this.#source,
        local: needs.local ?? localSpeech(browserSpeechEngine(), clock),
        onSound: this.#gate.sound,
        onNotice: (sentence) => {
          this.#notice(sentence);
        },
      }),
      settings: () => ({ rate: this.#rate.value(), volume: this.#volume.value() }),
      onTurn: ({ id, text, priority }) => {
        needs.onCaption({ id, kind: "speech", text, priority, at: clock.now() });
      },
      onSilence: this.#gate.silence,
    });
  }

  say(text: string, { priority = "cue", rate, volume = 1 }: SayOptions = {}): Promise<SayEnd> {
    return new Promise((settle) => {
      this.#talker.add({ id: this.#newId(), text, priority, rate: rate ?? null, volume, settle });
    });
  }

  stopTalking(): void {
    this.#talker.stop();
  }

  revoice(): void {
    this.#source.forget();
  }

  prefetch(texts: readonly string[]): void {
    this.#source.prefetch(texts, this.#rate.value());
  }

  isSpeaking(): boolean {
    return this.#gate.isSpeaking();
  }

  louder(): Setting {
    return this.#volume.move(1);
  }

  softer(): Setting {
    return this.#volume.move(-1);
  }

  slower(): Setting {
    return this.#rate.move(-1);
  }

  faster(): Setting {
    return this.#rate.move(1);
  }

  signal(kind: Earcon): void {
    const { output } = this.#needs;
    this.#journal.note({ kind: "earcon", text: kind, at: this.#clock.now() });
    if (output.state() === "ready")
      output.playTone(renderChime(earcon(kind), output.sampleRate()), this.#volume.value());
  }

  ring(timerId: string, chimeIndex: number, round: number, atEpochMs: number = this.#clock.now()): void {
    if (this.#needs.output.state() !== "ready" && !this.ringing().includes(timerId)) this.#notice(silentRing);
    this.#ringer.ring(timerId, chimeIndex, round, atEpochMs);
  }

  stopRing(timerId: string): void {
    this.#ringer.stop(timerId);
  }

  stopAllRings(): void {
    this.#ringer.stopAll();
  }

  ringing(): readonly string[] {
    return this.#ringer.ringing();
  }

  unlock(): Promise<AudioState> {
    return this.#needs.output.unlock();
  }

  audioState(): AudioState {
    return this.#needs.output.state();
  }

  onAudioState(listener: (state: AudioState) => void): () => void {
    return this.#needs.output.onState(listener);
  }

  journal(): readonly JournalEntry[] {
    return this.#journal.entries();
  }

  #newId(): number {
    this.#lastId += 1;
    return this.#lastId;
  }

  #notice(text: string): void {
    const at = this.#clock.now();
    this.#journal.note({ kind: "notice", text, at });
    this.#needs.onCaption({
      id: this.#newId(),
      kind: "notice",
      text,
      priority: this.#talker.speakingAt() ?? "cue",
      at,
    });
  }
}

/** Builds the sound layer; nothing sounds before `unlock` has been called from a tap where the browser asks for one. */
export function createSound(needs: SoundNeeds): Sound {
  return new KitchenSound(needs);
}
