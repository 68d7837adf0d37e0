import { earcon, type Earcon } from "../../core/sound/chime.ts";
import { renderChime } from "../../core/sound/render-chime.ts";
import type { AudioOutput, AudioState } from "./audio-output.ts";
import { systemClock, type Clock } from "./clock.ts";
import type { FetchSpeech } from "./fetch-speech.ts";
import { createJournal, type JournalEntry } from "./journal.ts";
import { browserSpeechEngine, localSpeech, type LocalSpeech } from "./local-speech.ts";
import { createRinger } from "./ringer.ts";
import { createSpeaker } from "./speaker.ts";
import { rateSteps, speakingGate, stepper, volumeSteps, type Setting } from "./settings.ts";
import type { Priority } from "./speech-queue.ts";
import { speechSource } from "./speech-source.ts";
import { createTalker, type SayEnd } from "./talker.ts";

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

/** Builds the sound layer; nothing sounds before `unlock` has been called from a tap where the browser asks for one. */
export function createSound(needs: SoundNeeds): Sound {
  const { output, onCaption, clock = systemClock } = needs;
  const local = needs.local ?? localSpeech(browserSpeechEngine(), clock);
  const journal = createJournal();
  const ringer = createRinger(output, clock, journal);
  const source = speechSource(needs.fetchSpeech, clock);
  const volume = stepper(volumeSteps, 3, ringer.volume);
  const rate = stepper(rateSteps, 2, () => undefined);
  const gate = speakingGate(clock, (edge) => {
    ringer.duck(edge === "start" ? "down" : "up");
    needs.onSpeaking(edge);
  });
  let lastId = 0;
  const newId = (): number => { lastId += 1; return lastId; };
  const notice = (text: string): void => {
    journal.note({ kind: "notice", text, at: clock.now() });
    onCaption({ id: newId(), kind: "notice", text, priority: talker.speakingAt() ?? "cue", at: clock.now() });
  };
  const talker = createTalker({
    clock,
    journal,
    speak: createSpeaker({ output, source, local, clock }, { onSound: gate.sound, onNotice: notice }),
    settings: () => ({ rate: rate.value(), volume: volume.value() }),
    onTurn: ({ id, text, priority }) => { onCaption({ id, kind: "speech", text, priority, at: clock.now() }); },
    onSilence: gate.silence,
  });
  ringer.volume(volume.value());

  return {
    say: (text, options = {}) =>
      new Promise((settle) => {
        talker.add({ id: newId(), text, priority: options.priority ?? "cue", rate: options.rate ?? null, volume: options.volume ?? 1, settle });
      }),
    stopTalking: talker.stop,
    prefetch: (texts) => { source.prefetch(texts, rate.value()); },
    isSpeaking: gate.isSpeaking,
    louder: () => volume.move(1),
    softer: () => volume.move(-1),
    slower: () => rate.move(-1),
    faster: () => rate.move(1),
    signal: (kind) => {
      journal.note({ kind: "earcon", text: kind, at: clock.now() });
      if (output.state() === "ready") output.playTone(renderChime(earcon(kind), output.sampleRate()), volume.value());
    },
    ring: (timerId, chimeIndex, round, atEpochMs = clock.now()) => {
      if (output.state() !== "ready" && !ringer.ringing().includes(timerId)) notice(silentRing);
      ringer.ring(timerId, chimeIndex, round, atEpochMs);
    },
    stopRing: ringer.stop,
    stopAllRings: ringer.stopAll,
    ringing: ringer.ringing,
    unlock: output.unlock,
    audioState: output.state,
    onAudioState: output.onState,
    journal: journal.entries,
  };
}
