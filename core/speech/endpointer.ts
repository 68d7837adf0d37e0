import type { FrameHeard } from "./frame-heard.ts";
import { type LouderVoiceSettings, othersUnder } from "./louder-voice.ts";
import { frameMs } from "./samples.ts";

/** How the endpointer decides; all times in milliseconds, all levels in dB. */
export type EndpointerSettings = LouderVoiceSettings & {
  /** Where a voice stands this far above the floor its end is heard by the level too, sooner than by its kind. */
  readonly clearDb: number;
  /** How far above the noise floor a frame must be to begin speech. */
  readonly onsetDb: number;
  /** How far above the floor speech must stay to go on; below onsetDb, so that soft endings belong to it. */
  readonly offsetDb: number;
  /** While a louder voice speaks, what is not this far above the others is theirs. */
  readonly aboveOthersDb: number;
  /** Nothing quieter than this is speech, however quiet the room (dBFS in the speech band). */
  readonly quietestDb: number;
  /** Within this much the loud time of a beginning must lie. */
  readonly onsetWindowMs: number;
  /** Sound kept from before the beginning, so that a soft first consonant is not lost. */
  readonly preRollMs: number;
  /** An utterance is cut here: nobody commands a kitchen for longer, and a running tap might. */
  readonly longestMs: number;
  /** Span over which the noise floor is looked for. */
  readonly floorSpanMs: number;
};

/** Settings that did best over voices, fan and tap in tests/bench/voice.bench.ts. */
export const defaultEndpointer: EndpointerSettings = {
  onsetVoice: 0.5,
  offsetVoice: 0.35,
  clearDb: 30,
  onsetDb: 9,
  offsetDb: 6,
  louderDb: 6,
  aboveOthersDb: 2,
  quietestDb: -62,
  onsetMs: 80,
  onsetWindowMs: 160,
  preRollMs: 300,
  longestMs: 12_000,
  floorSpanMs: 2_000,
};

/** Where the endpointer stands. Frames are counted from 0 at the start of the stream. */
export type EndpointerState = {
  readonly phase:
    | { readonly kind: "quiet" }
    | {
        readonly kind: "speech";
        readonly from: number;
        readonly quietFrames: number;
        readonly loudestDb: number;
        /** Where a louder voice has begun since, and how loud the others are; null while all may be one voice. */
        readonly louder: { readonly from: number; readonly othersDb: number } | null;
      };
  /** Number of the next frame. */
  readonly frame: number;
  /** The last frames, oldest first; the floor comes from these. */
  readonly recent: readonly FrameHeard[];
};

/** What a frame brought about. */
export type EndpointerStep =
  | { readonly kind: "none" }
  /** Speech has begun at frame `from`, pre-roll included, which may lie before this one. */
  | { readonly kind: "started"; readonly from: number }
  | { readonly kind: "speech" }
  /** Within an utterance a louder voice has begun at frame `from`: what was said before may be somebody else's. */
  | { readonly kind: "louder"; readonly from: number }
  /** Quiet inside an utterance so far; the caller may shorten or lengthen the wait by `hangoverMs`. */
  | { readonly kind: "pause"; readonly quietMs: number }
  /** The utterance is over; its last loud frame was `lastLoud`. */
  | { readonly kind: "ended"; readonly lastLoud: number; readonly why: "quiet" | "too-long" };

/** The loudness that counts as nothing at all, so that digital silence stays a number. */
const silenceDb = -90;

/** What an unknown room is taken for: louder than most, so that its hum is no speech and a voice at once is. */
const unknownRoomDb = -50;

/** The start of a stream: quiet, and the room unknown. */
export const initialEndpointer: EndpointerState = { phase: { kind: "quiet" }, frame: 0, recent: [] };

/**
 * Takes one frame. What a voice is decides where it is known, so that a tap or a clatter neither begins an utterance
 * nor hides its soft ends; how loud it is decides where it is not.
 * @param hangoverMs quiet that ends the utterance; short when the sentence so far is complete ("finish early"),
 *   longer while it is not, so that a cook may think in the middle
 */
export function stepEndpointer(
  state: EndpointerState,
  heard: FrameHeard,
  hangoverMs: number,
  settings: EndpointerSettings = defaultEndpointer,
): { readonly state: EndpointerState; readonly step: EndpointerStep } {
  const frame: FrameHeard = { ...heard, levelDb: Math.max(silenceDb, heard.levelDb) };
  const recent = [...state.recent, frame].slice(-Math.round(settings.floorSpanMs / frameMs));
  const levels = recent.map(({ levelDb }) => levelDb);
  const now: Moment = { at: state.frame, frame, recent, floorDb: noiseFloor(levels, settings) };
  const { phase, step } =
    state.phase.kind === "quiet"
      ? whileQuiet(now, settings)
      : whileSpeaking(state.phase, now, hangoverMs, settings);
  return { state: { phase, frame: state.frame + 1, recent }, step };
}

type Phase = EndpointerState["phase"];
type Change = { readonly phase: Phase; readonly step: EndpointerStep };

/** One frame, its number, and what is known of the last two seconds. */
type Moment = {
  readonly at: number;
  readonly frame: FrameHeard;
  readonly recent: readonly FrameHeard[];
  readonly floorDb: number;
};

function whileQuiet({ at, recent, floorDb }: Moment, settings: EndpointerSettings): Change {
  const window = recent.slice(-windowFrames(settings));
  const beginning = window.filter((each) => mayBegin(each, floorDb, settings)).length;
  if (beginning * frameMs < settings.onsetMs) return { phase: { kind: "quiet" }, step: { kind: "none" } };
  const from = beginningOf(at, settings);
  const loudestDb = Math.max(...window.map(({ levelDb }) => levelDb));
  return {
    phase: { kind: "speech", from, quietFrames: 0, loudestDb, louder: null },
    step: { kind: "started", from },
  };
}

function whileSpeaking(
  before: Extract<Phase, { readonly kind: "speech" }>,
  { at, frame, recent, floorDb }: Moment,
  hangoverMs: number,
  settings: EndpointerSettings,
): Change {
  const { from } = before;
  const loudestDb = Math.max(before.loudestDb, frame.levelDb);
  const othersDb = othersUnder(recent, windowFrames(settings), settings);
  const begins = othersDb !== null && othersDb > (before.louder?.othersDb ?? -Infinity) + settings.louderDb;
  const louder = begins ? { from: beginningOf(at, settings), othersDb } : before.louder;
  if (begins) {
    const phase = { kind: "speech", from, quietFrames: 0, loudestDb, louder } as const;
    return { phase, step: { kind: "louder", from: beginningOf(at, settings) } };
  }
  const isTheirs = louder !== null && frame.levelDb < louder.othersDb + settings.aboveOthersDb;
  const isSpeech = !isTheirs && goesOn(frame, floorDb, loudestDb, settings);
  const quietFrames = isSpeech ? 0 : before.quietFrames + 1;
  const isTooLong = (at - (louder?.from ?? from)) * frameMs >= settings.longestMs;
  if (isTooLong || quietFrames * frameMs >= hangoverMs) {
    const why = isTooLong ? "too-long" : "quiet";
    return { phase: { kind: "quiet" }, step: { kind: "ended", lastLoud: at - quietFrames, why } };
  }
  return {
    phase: { kind: "speech", from, quietFrames, loudestDb, louder },
    step: isSpeech ? { kind: "speech" } : { kind: "pause", quietMs: quietFrames * frameMs },
  };
}

const windowFrames = ({ onsetWindowMs }: EndpointerSettings): number => Math.round(onsetWindowMs / frameMs);

/** Where that began which fills the onset window up to this frame, pre-roll included. */
const beginningOf = (at: number, settings: EndpointerSettings): number =>
  Math.max(0, at + 1 - windowFrames(settings) - Math.round(settings.preRollMs / frameMs));

function mayBegin({ levelDb, voice }: FrameHeard, floorDb: number, settings: EndpointerSettings): boolean {
  if (voice === null) return levelDb > threshold(floorDb, settings.onsetDb, settings);
  return voice > settings.onsetVoice && levelDb > settings.quietestDb;
}

function goesOn(
  { levelDb, voice }: FrameHeard,
  floorDb: number,
  loudestDb: number,
  settings: EndpointerSettings,
): boolean {
  const isLoud = levelDb > threshold(floorDb, settings.offsetDb, settings);
  if (voice === null) return isLoud;
  // What a voice leaves behind passes for one for a tenth of a second; in a quiet room the level knows better.
  const isClear = loudestDb - floorDb > settings.clearDb;
  return voice > settings.offsetVoice && (isLoud || !isClear);
}

/**
 * The noise floor: the level that a tenth of the last frames stay below. Speech has gaps, so its floor is the room;
 * a tap has none, so after one span its own level becomes the floor and it is no longer speech.
 */
export function noiseFloor(
  recent: readonly number[],
  settings: EndpointerSettings = defaultEndpointer,
): number {
  const enough = settings.floorSpanMs / frameMs / 4;
  const sorted = [
    ...recent,
    ...Array.from({ length: Math.max(0, enough - recent.length) }, () => unknownRoomDb),
  ].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 10)] ?? silenceDb;
}

function threshold(floor: number, above: number, settings: EndpointerSettings): number {
  return Math.max(settings.quietestDb, floor + above);
}
