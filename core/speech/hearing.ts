import { type Acceptance, judge, type Verdict } from "./acceptance.ts";
import { withoutFillers } from "./chatter.ts";
import {
  type EndpointerState,
  type EndpointerSettings,
  initialEndpointer,
  stepEndpointer,
} from "./endpointer.ts";
import { createOffsetFilter, createSpeechMeter, loudness } from "./loudness.ts";
import { createMatcher, type Matcher } from "./progress.ts";
import type { Hypothesis, ListenFor, Recogniser } from "./recogniser.ts";
import { ok, type Result } from "../units/result.ts";
import { createFramer, frameMs, frameSamples, joinSamples, listeningRate } from "./samples.ts";
import { spokenWords } from "./spoken-words.ts";

/** What listening brings about, in order. Frames are 20 ms, counted from the start of the stream. */
export type HearingEvent =
  | { readonly kind: "level"; readonly dbfs: number }
  | { readonly kind: "speech-started"; readonly atFrame: number }
  | { readonly kind: "partial"; readonly words: readonly string[] }
  /** A grammar that had to wait for the end of an utterance was then refused; the one before goes on. */
  | { readonly kind: "grammar-refused"; readonly sentence: string }
  | {
      readonly kind: "heard";
      readonly verdict: Verdict;
      readonly startedAtFrame: number;
      readonly endedAtFrame: number;
    };

/** Settings of listening, in milliseconds. */
export type HearingSettings = {
  readonly endpointer: EndpointerSettings;
  readonly acceptance: Acceptance;
  /** Quiet that ends an utterance whose words are a whole sentence, one that could go on, one that must go on. */
  readonly hangoverMs: {
    readonly finished: number;
    readonly mayGoOn: number;
    readonly begun: number;
    readonly otherwise: number;
  };
  /** After the address alone, how long its sound is kept to be joined to the command that follows. */
  readonly addressHeldMs: number;
  /** An utterance up to this long that came to nothing is heard once more as a whole; commands are no longer. */
  readonly reconsiderMs: number;
};

/**
 * A sentence that nothing can be added to ends after 200 ms, about the gap people leave between turns
 * (Levinson & Torreira, Frontiers in Psychology 2015); one in the middle may pause almost a second.
 */
export const defaultHearingTimes = {
  hangoverMs: { finished: 200, mayGoOn: 360, begun: 900, otherwise: 500 },
  addressHeldMs: 4_000,
  reconsiderMs: 6_000,
} as const;

/** Listening to one stream. Calls come one after another, each awaited. */
export type Hearing = {
  /**
   * Listens for something else: "now", dropping what is being said, or "after-utterance", letting it end first
   * (a timer that rings must not cut off the cook's sentence).
   */
  readonly listenFor: (what: ListenFor, when: "now" | "after-utterance") => Promise<Result<null, string>>;
  /** Takes the next samples at 16 kHz, any number. */
  readonly accept: (block: Float32Array) => Promise<readonly HearingEvent[]>;
  /** The stream is over: ends an open utterance. */
  readonly finish: () => Promise<readonly HearingEvent[]>;
  /** Forgets the stream so far, its voice, an open utterance and a held address; the grammar stays. */
  readonly reset: () => Promise<void>;
};

type Utterance = { readonly from: number; readonly frames: Float32Array[]; partial: readonly string[] };

/** Puts the endpointer before a loaded recogniser; the same in the browser and on the command line. */
export function createHearing(recogniser: Recogniser, settings: HearingSettings): Hearing {
  let wanted: ListenFor | null = null;
  let matcher: Matcher | null = null;
  let waiting: ListenFor | null = null;
  let state: EndpointerState = initialEndpointer;
  let utterance: Utterance | null = null;
  let held: { readonly frames: readonly Float32Array[]; readonly untilFrame: number } | null = null;
  let recent: Float32Array[] = [];
  let cut = createFramer(frameSamples);
  let removeOffset = createOffsetFilter(listeningRate);
  let meter = createSpeechMeter(listeningRate);
  let hangover: number = settings.hangoverMs.otherwise;

  const begin = (from: number): void => {
    // The address alone was just heard: its sound comes before this, so that both are judged as one sentence.
    const before = held !== null && state.frame <= held.untilFrame ? held.frames : [];
    held = null;
    utterance = { from, frames: [...before], partial: [] };
    hangover = settings.hangoverMs.otherwise;
    for (const frame of before) recogniser.accept(frame);
    for (const frame of recent.slice(-(state.frame - from))) feed(utterance, frame);
  };
  const feed = (open: Utterance, frame: Float32Array): void => {
    open.frames.push(frame);
    recogniser.accept(frame);
  };
  const updatePartial = (open: Utterance): HearingEvent[] => {
    const words = withoutFillers(recogniser.partial());
    hangover = hangoverFor(words);
    if (words.join(" ") === open.partial.join(" ")) return [];
    open.partial = words;
    return [{ kind: "partial", words }];
  };
  const hangoverFor = (words: readonly string[]): number => {
    const { finished, mayGoOn, begun, otherwise } = settings.hangoverMs;
    const address = wanted?.address === null || wanted === null ? [] : spokenWords(wanted.address);
    const isAddressed = address.length > 0 && address.every((word, at) => words[at] === word);
    const said = isAddressed ? words.slice(address.length) : words;
    if (said.length === 0) return otherwise;
    switch (matcher?.progress(said) ?? "unmatched") {
      case "finished":
        return finished;
      case "may-go-on":
        return mayGoOn;
      case "begun":
        return begun;
      case "unmatched":
        return otherwise;
    }
  };
  const change = (what: ListenFor): Promise<Result<null, string>> => {
    waiting = null;
    wanted = what;
    matcher = createMatcher(what.grammar);
    return recogniser.setGrammar(what);
  };
  const decide = (hypothesis: Hypothesis): Verdict => {
    const judged = judge(
      hypothesis,
      wanted?.address ?? null,
      wanted?.mode ?? "addressed",
      settings.acceptance,
    );
    // An engine without rules may string words together that are no sentence.
    const isSentence =
      judged.kind !== "command" ||
      ["finished", "may-go-on"].includes(matcher?.progress(judged.words) ?? "unmatched");
    return isSentence ? judged : { kind: "none", why: "doubtful" };
  };
  const conclude = async (open: Utterance, lastLoud: number): Promise<readonly HearingEvent[]> => {
    utterance = null;
    const first = decide(await recogniser.end());
    const isShort = open.frames.length * frameMs <= settings.reconsiderMs;
    const again =
      first.kind === "none" && isShort
        ? decide(await recogniser.reconsider(joinSamples(open.frames)))
        : first;
    const verdict = again.kind === "none" ? first : again;
    held =
      verdict.kind === "address-only"
        ? { frames: open.frames, untilFrame: state.frame + settings.addressHeldMs / frameMs }
        : null;
    const heard = { kind: "heard", verdict, startedAtFrame: open.from, endedAtFrame: lastLoud } as const;
    const changed = waiting === null ? null : await change(waiting);
    return changed === null || changed.ok
      ? [heard]
      : [heard, { kind: "grammar-refused", sentence: changed.error }];
  };
  const acceptFrame = async (frame: Float32Array): Promise<readonly HearingEvent[]> => {
    const events: HearingEvent[] = [];
    recent = [...recent, frame].slice(-keptFrames);
    const { state: next, step } = stepEndpointer(state, meter(frame), hangover, settings.endpointer);
    state = next;
    if (state.frame % framesALevel === 0) events.push({ kind: "level", dbfs: loudness(frame) });
    switch (step.kind) {
      case "none":
        break;
      case "started":
        events.push({ kind: "speech-started", atFrame: step.from });
        begin(step.from);
        break;
      case "speech":
      case "pause":
        if (utterance === null) break;
        feed(utterance, frame);
        // Asking costs a walk back through the search, so not for every frame, but for each in a pause.
        if (step.kind === "pause" || state.frame % framesAPartial === 0)
          events.push(...updatePartial(utterance));
        break;
      case "ended":
        if (utterance !== null) events.push(...(await conclude(utterance, step.lastLoud)));
    }
    return events;
  };
  const reset = async (): Promise<void> => {
    await recogniser.forget();
    utterance = null;
    held = null;
    recent = [];
    state = initialEndpointer;
    cut = createFramer(frameSamples);
    removeOffset = createOffsetFilter(listeningRate);
    meter = createSpeechMeter(listeningRate);
  };
  return {
    listenFor: async (what, when) => {
      if (utterance !== null && when === "after-utterance") {
        waiting = what;
        return ok(null);
      }
      if (utterance !== null) await recogniser.end();
      utterance = null;
      recent = [];
      state = { ...state, phase: { kind: "quiet" } };
      return change(what);
    },
    accept: async (block) => {
      const events: HearingEvent[] = [];
      for (const frame of cut(removeOffset(block))) events.push(...(await acceptFrame(frame)));
      return events;
    },
    finish: async () => (utterance === null ? [] : conclude(utterance, state.frame - 1)),
    reset,
  };
}

/** A level ten times a second is enough for a meter. */
const framesALevel = 5;
const framesAPartial = 5;
/** Frames kept for the pre-roll: a second. */
const keptFrames = 50;
