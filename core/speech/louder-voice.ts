import type { FrameHeard } from "./frame-heard.ts";
import { frameMs } from "./samples.ts";

/** When a frame is a voice, and when that is another one. */
export type LouderVoiceSettings = {
  /** As likely as this to be a voice, a frame may begin speech. */
  readonly onsetVoice: number;
  /** As likely as this, speech goes on. */
  readonly offsetVoice: number;
  /** Loud time that makes a beginning, in milliseconds; a clink is shorter. */
  readonly onsetMs: number;
  /** A voice this far above those that spoke before it is another one, nearer to the microphone; in dB. */
  readonly louderDb: number;
};

/**
 * Less voice than this in the last two seconds tells nothing of how loud others are: who calls takes a second for the
 * address, and may go on with more stress. What was softer then would be taken for theirs, and its end be lost.
 */
const fewestMs = 1_200;

/** What nine tenths of the voices in these frames stay below, dBFS in the speech band; null where there are hardly any. */
function voicesDb(frames: readonly FrameHeard[], { offsetVoice }: LouderVoiceSettings): number | null {
  const levels = frames
    .filter(({ voice }) => voice !== null && voice > offsetVoice)
    .map(({ levelDb }) => levelDb);
  if (levels.length * frameMs < fewestMs) return null;
  return levels.sort((a, b) => a - b)[Math.floor(levels.length * 0.9)] ?? null;
}

/**
 * How loud the other voices are over which a louder one has just begun, in its last frames; null where none has. The
 * radio is softer than the cook who stands before the microphone, and the step between them is where a call may begin.
 */
export function othersUnder(
  recent: readonly FrameHeard[],
  windowFrames: number,
  settings: LouderVoiceSettings,
): number | null {
  const others = voicesDb(recent.slice(0, -windowFrames), settings);
  if (others === null) return null;
  const louder = recent
    .slice(-windowFrames)
    .filter(
      ({ levelDb, voice }) => (voice ?? 0) > settings.onsetVoice && levelDb > others + settings.louderDb,
    );
  return louder.length * frameMs >= settings.onsetMs ? others : null;
}
