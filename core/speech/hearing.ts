import { ok, type Result } from "../units/result.ts";
import { createCookLevel } from "./cook-level.ts";
import {
  type EndpointerState,
  type EndpointerStep,
  initialEndpointer,
  stepEndpointer,
} from "./endpointer.ts";
import { type Expectation, expectation, isAddressed, progressOf } from "./expectation.ts";
import { finalVerdict } from "./final-verdict.ts";
import { createFront } from "./front.ts";
import { hangoverAfter } from "./hangover.ts";
import type { HearingEvent } from "./hearing-event.ts";
import type { HearingSettings } from "./hearing-settings.ts";
import { loudness } from "./loudness.ts";
import { type HandOut, soundToHandOut } from "./misheard/sound-to-hand-out.ts";
import { openUtterance, type OpenUtterance } from "./open-utterance.ts";
import type { ListenFor, Recogniser } from "./recogniser.ts";
import { roomSecond } from "./room-noise.ts";
import { frameMs, frameSamples } from "./samples.ts";
import { sentenceLevels } from "./sentence-levels.ts";
import { amplified, type EarTuning } from "./tuning.ts";
import type { VoiceDetector } from "./voice-detector.ts";

/**
 * When something else is listened for while somebody speaks: at the end of the sentence (a timer that rings must not
 * cut it off), or at once, its last `keepMs` being heard anew. A sentence that began with the address is meant for us
 * either way, and always let end.
 */
export type ListenWhen = "after-utterance" | { readonly keepMs: number };

/** Listening to one stream. Calls come one after another, each awaited. */
export type Hearing = {
  readonly listenFor: (what: ListenFor, when: ListenWhen) => Promise<Result<null, string>>;
  /** From the next samples on, and for good: another gain, another limit of what may be speech. */
  readonly tune: (tuning: EarTuning) => void;
  /** Takes the next samples at 16 kHz, any number. */
  readonly accept: (block: Float32Array) => Promise<readonly HearingEvent[]>;
  /** The stream is over: ends an open utterance. */
  readonly finish: () => Promise<readonly HearingEvent[]>;
  /** Whether the sound of sentences that may be misheard is handed out with them; at first it never is. */
  readonly handOut: (sounds: HandOut) => void;
  /** Forgets the stream so far, its voice, an open utterance and a held address; the grammar stays. */
  readonly reset: () => Promise<void>;
};

type Ending = { readonly lastLoud: number; readonly why: "quiet" | "too-long" };

/** What a stream goes through; all loaded. */
export type HearingParts = {
  readonly recogniser: Recogniser;
  /** Null where voices are told from other sounds by their loudness alone. */
  readonly detector: VoiceDetector | null;
};

/** Puts the endpointer before a recogniser; the same in the browser and on the command line. */
export function createHearing(parts: HearingParts, settings: HearingSettings): Hearing {
  return new StreamHearing(parts, settings);
}

/** A level ten times a second is enough for a meter. */
const framesALevel = 5;
const framesAPartial = 5;
const framesASecond = 1000 / frameMs;
/** Frames kept for the pre-roll: a second. */
const keptFrames = 50;

class StreamHearing implements Hearing {
  private readonly recogniser: Recogniser;
  private readonly detector: VoiceDetector | null;
  private readonly settings: HearingSettings;
  private tuning: EarTuning;
  private front = createFront();
  private cookLevel = createCookLevel();
  private expected: Expectation | null = null;
  private waiting: ListenFor | null = null;
  private state: EndpointerState = initialEndpointer;
  private utterance: OpenUtterance | null = null;
  private held: { readonly frames: readonly Float32Array[]; readonly untilFrame: number } | null = null;
  private recent: readonly Float32Array[] = [];
  private hangoverMs: number;
  private handsOut = false;

  constructor({ recogniser, detector }: HearingParts, settings: HearingSettings) {
    this.recogniser = recogniser;
    this.detector = detector;
    this.settings = settings;
    this.tuning = { gainDb: 0, quietestDb: settings.endpointer.quietestDb };
    this.hangoverMs = settings.hangoverMs.otherwise;
  }

  readonly listenFor: Hearing["listenFor"] = async (what, when) => {
    const { utterance } = this;
    if (utterance !== null && (when === "after-utterance" || this.isCalling(utterance))) {
      this.waiting = what;
      return ok(null);
    }
    if (when === "after-utterance") return this.change(what);
    const kept = Math.round(when.keepMs / frameMs);
    this.recent = this.recent.slice(-kept);
    if (utterance === null) return this.change(what);
    this.utterance = null;
    await this.recogniser.end(null);
    this.cookLevel.endSentence("refused");
    const changed = await this.change(what);
    if (!changed.ok) return changed;
    const opened = this.open(
      Math.max(utterance.from, this.state.frame - kept),
      utterance.frames.slice(-kept),
    );
    if (what.mode !== "stop-only") opened.framesWanted = this.settings.endpointer.onsetMs / frameMs;
    return changed;
  };

  readonly tune: Hearing["tune"] = (tuning) => {
    const louderDb = tuning.gainDb - this.tuning.gainDb;
    const recent = this.state.recent.map((heard) => ({ ...heard, levelDb: heard.levelDb + louderDb }));
    this.state = { ...this.state, recent };
    if (louderDb !== 0) this.cookLevel = createCookLevel();
    this.tuning = tuning;
  };

  readonly accept: Hearing["accept"] = async (block) => {
    const events: HearingEvent[] = [];
    const endpointer = { ...this.settings.endpointer, quietestDb: this.tuning.quietestDb };
    for (const frame of this.front.cut(amplified(this.front.removeOffset(block), this.tuning.gainDb))) {
      this.recent = [...this.recent, frame].slice(-keptFrames);
      const heard = { levelDb: this.front.meter(frame), voice: (await this.detector?.hear(frame)) ?? null };
      const { state, step } = stepEndpointer(this.state, heard, this.hangoverMs, endpointer);
      this.state = state;
      if (step.kind === "speech") this.cookLevel.hear(heard.levelDb);
      if (state.frame % framesALevel === 0) events.push({ kind: "level", dbfs: loudness(frame) });
      if (state.frame % framesASecond === 0) {
        const levels = state.recent.slice(-framesASecond).map(({ levelDb }) => levelDb);
        const second = roomSecond(levels, this.cookLevel.levelDb());
        events.push({ kind: "room", ...second });
      }
      events.push(...(await this.follow(step, frame)));
    }
    return events;
  };

  readonly finish: Hearing["finish"] = async () =>
    this.utterance === null
      ? []
      : this.conclude(this.utterance, { lastLoud: this.state.frame - 1, why: "too-long" });

  readonly handOut: Hearing["handOut"] = (sounds) => {
    this.handsOut = sounds === "maybe-misheard";
  };

  readonly reset: Hearing["reset"] = async () => {
    await this.recogniser.forget();
    this.detector?.forget();
    this.utterance = null;
    this.held = null;
    this.recent = [];
    this.state = initialEndpointer;
    this.front = createFront();
    this.cookLevel = createCookLevel();
  };

  private change(what: ListenFor): Promise<Result<null, string>> {
    this.waiting = null;
    this.expected = expectation(what);
    return this.recogniser.setGrammar(what);
  }

  private async follow(step: EndpointerStep, frame: Float32Array): Promise<readonly HearingEvent[]> {
    if (step.kind === "started") {
      this.begin(step.from);
      return [{ kind: "speech-started", atFrame: step.from }];
    }
    const { utterance } = this;
    if (utterance === null || step.kind === "none") return [];
    if (step.kind === "ended") return this.conclude(utterance, step);
    if (step.kind === "speech") utterance.framesWanted--;
    this.feed(utterance, frame);
    if (step.kind === "louder") this.beginAnew(utterance, step.from);
    if (step.kind === "pause") await this.anticipate(utterance, step.quietMs);
    else this.goOn(utterance);
    return step.kind === "pause" || this.state.frame % framesAPartial === 0
      ? this.showPartial(utterance)
      : [];
  }

  /** Thinking begins early in a pause, and its answer is waited for when the shortest pause could end the utterance. */
  private async anticipate(utterance: OpenUtterance, quietMs: number): Promise<void> {
    const { anticipateMs, hangoverMs } = this.settings;
    const spokenMs = utterance.frames.length * frameMs - quietMs;
    if (quietMs < (spokenMs < anticipateMs.shortUpTo ? anticipateMs.short : anticipateMs.usual)) return;
    const pause = this.state.frame - quietMs / frameMs;
    const mayLack = !utterance.isAll && this.hangoverMs >= hangoverMs.otherwise;
    if (quietMs >= anticipateMs.again && mayLack) {
      // What is soft may lie below the noise and look like a pause: the answer is made of all that was heard.
      utterance.look = pause + 0.5;
      void this.recogniser.anticipate(utterance.look).catch(() => undefined); // `end` asks again, and fails then
      return;
    }
    utterance.look = pause;
    const answer = this.recogniser.anticipate(pause);
    if (quietMs < hangoverMs.finished) return;
    const { words, isAll } = await answer;
    utterance.partial = words;
    utterance.isAll = isAll;
    this.hangoverMs = hangoverAfter(
      this.expected === null ? null : progressOf(this.expected, words),
      hangoverMs,
    );
  }

  private goOn(utterance: OpenUtterance): void {
    this.hangoverMs = this.settings.hangoverMs.otherwise;
    if (utterance.look !== null) this.recogniser.goOn();
    utterance.look = null;
  }

  private begin(from: number): void {
    // The address alone was just heard: its sound comes before this, so that both are judged as one sentence.
    const isHeld = this.held !== null && this.state.frame <= this.held.untilFrame;
    const before = isHeld ? (this.held?.frames ?? []) : [];
    this.held = null;
    this.open(from, [...before, ...this.recent.slice(-(this.state.frame - from))]);
  }

  private open(from: number, frames: readonly Float32Array[]): OpenUtterance {
    const utterance = openUtterance(from, this.state);
    this.utterance = utterance;
    this.hangoverMs = this.settings.hangoverMs.otherwise;
    for (const frame of frames) this.feed(utterance, frame);
    return utterance;
  }

  /** Somebody speaks over others, who may have begun the utterance. */
  private beginAnew(utterance: OpenUtterance, from: number): void {
    const framesAgo = Math.min(this.state.frame - from, utterance.frames.length);
    utterance.framesBefore = utterance.frames.length - framesAgo;
    this.cookLevel.endSentence("refused");
    this.recogniser.mayBegin(framesAgo * frameSamples);
  }

  private isCalling({ partial }: OpenUtterance): boolean {
    return this.expected !== null && isAddressed(this.expected, partial);
  }

  private feed(utterance: OpenUtterance, frame: Float32Array): void {
    utterance.frames.push(frame);
    this.recogniser.accept(frame);
  }

  private showPartial(utterance: OpenUtterance): readonly HearingEvent[] {
    const words = this.recogniser.partial();
    if (words.join(" ") === utterance.shown) return [];
    utterance.shown = words.join(" ");
    utterance.partial = words;
    return [{ kind: "partial", words }];
  }

  private async conclude(utterance: OpenUtterance, step: Ending): Promise<readonly HearingEvent[]> {
    const { expected, handsOut } = this;
    this.utterance = null;
    const pause = step.why === "quiet" ? utterance.look : null;
    const words = handsOut ? await this.wordsSoFar(pause) : [];
    const judged = await this.recogniser.end(pause);
    const verdict = finalVerdict(judged, utterance, this.front.isBroken());
    this.cookLevel.endSentence(verdict.kind === "none" ? "refused" : "accepted");
    const untilFrame = this.state.frame + this.settings.addressHeldMs / frameMs;
    // Whatever was said before a louder voice began is nobody's business.
    const frames = utterance.frames.slice(utterance.framesBefore);
    this.held = verdict.kind === "address-only" ? { frames, untilFrame } : null;
    const heard = {
      kind: "heard",
      verdict,
      levels: sentenceLevels(frames, utterance.noiseDb),
      sound: handsOut && expected !== null ? soundToHandOut({ frames, verdict, words, expected }) : null,
      startedAtFrame: utterance.from,
      endedAtFrame: step.lastLoud,
      concludedAtFrame: this.state.frame,
    } as const;
    const changed = this.waiting === null ? ok(null) : await this.change(this.waiting);
    return changed.ok ? [heard] : [heard, { kind: "grammar-refused", sentence: changed.error }];
  }

  /** All that was written down of an utterance that is over, whatever comes of it. */
  private async wordsSoFar(pause: number | null): Promise<readonly string[]> {
    // The same answer is waited for at the end, so this takes no time of its own.
    if (pause !== null) await this.recogniser.anticipate(pause);
    return this.recogniser.partial();
  }
}
