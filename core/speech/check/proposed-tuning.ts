import type { SentenceLevels } from "../sentence-levels.ts";
import { type EarTuning, usualTuning } from "../tuning.ts";
import { tuningLimits } from "../tuning-limits.ts";

/** What a check would set. */
export type Proposal =
  /** The voice comes in as it should, with what an earlier check has set where one has. */
  | { readonly kind: "as-it-is" }
  /** It does without what an earlier check has set. */
  | { readonly kind: "back-to-usual" }
  | { readonly kind: "tune"; readonly tuning: EarTuning }
  /** Made louder, the noise of the room would pass for somebody who begins to speak. */
  | { readonly kind: "too-noisy" }
  /** No voice was heard. */
  | { readonly kind: "unknown" };

/** The level that speech is brought to, dBFS. Telephony does the same (ITU-T G.100.1; the figure from memory). */
export const wantedVoiceDb = -26;

/** The loudest sample stays this far below full scale, in dB. */
const headroomDb = 2;

/** The usual voice lies this far above the usual limit of what may be speech: -31 and -62 dBFS in the speech band. */
const voiceOverLimitDb = 31;

/** The limit stands so far above nine tenths of the noise, and at least so far below the voice, in dB. */
const limitOverNoiseDb = 3;
const voiceOverLimitLeastDb = 12;

/** A room of which nothing is known is taken to be as loud as the usual limit allows, dBFS in the speech band. */
const unknownNoiseDb = usualTuning.quietestDb - limitOverNoiseDb;

/** A change smaller than this is not worth a setting, in dB; two checks of one voice differ by as much. */
const leastChangeDb = 2;

/**
 * A gain that brings the voice to the level that speech is wanted at, and a limit below the voice and above the noise.
 * @param levels measured without any gain; null where no voice was heard
 * @param before what an earlier check has set; null where nothing is set
 */
export function proposedTuning(levels: SentenceLevels | null, before: EarTuning | null): Proposal {
  if (levels === null) return { kind: "unknown" };
  const { voiceDb, bandDb, peakDb } = levels;
  const noiseDb = levels.noiseDb ?? unknownNoiseDb;
  const gainDb = Math.round(
    within(tuningLimits.gainDb, Math.min(wantedVoiceDb - voiceDb, Math.max(0, -headroomDb - peakDb))),
  );
  const aboveNoise = noiseDb + gainDb + limitOverNoiseDb;
  const belowVoice = bandDb + gainDb - voiceOverLimitLeastDb;
  // Where noise and voice lie too close the limit cannot part them: what is louder would only be a louder noise.
  if (aboveNoise > belowVoice) return gainDb > 0 ? { kind: "too-noisy" } : { kind: "as-it-is" };
  const wanted = Math.max(bandDb + gainDb - voiceOverLimitDb, aboveNoise);
  const quietestDb = Math.round(within(tuningLimits.quietestDb, wanted));
  const tuning = { gainDb, quietestDb };
  const isUsual = Math.abs(gainDb) < leastChangeDb && quietestDb > usualTuning.quietestDb - leastChangeDb;
  if (isUsual) return { kind: before === null ? "as-it-is" : "back-to-usual" };
  return before !== null && isNear(tuning, before) ? { kind: "as-it-is" } : { kind: "tune", tuning };
}

const isNear = (one: EarTuning, other: EarTuning): boolean =>
  Math.abs(one.gainDb - other.gainDb) <= leastChangeDb &&
  Math.abs(one.quietestDb - other.quietestDb) <= leastChangeDb;

const within = ([least, most]: readonly [number, number], value: number): number =>
  Math.min(most, Math.max(least, value));
