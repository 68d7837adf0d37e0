import { median } from "../median.ts";
import { typicalSpeechDb } from "../room-noise.ts";
import type { SentenceLevels } from "../sentence-levels.ts";
import type { EarTuning } from "../tuning.ts";
import { addresses, confusedTimes } from "./addresses.ts";
import type { CheckResult, EarCheck } from "./ear-check.ts";
import { type Proposal, proposedTuning } from "./proposed-tuning.ts";

/** How the voice comes in, without any gain. */
export type VoiceIs = "unheard" | "very-soft" | "soft" | "good" | "loud" | "overloading";

/** How loud the room is, beside the voice where there was one. */
export type RoomIs = "unknown" | "quiet" | "noisy" | "loud" | "drowning";

/** What a check has found. */
export type EarFindings = {
  /** Of the sentences that were not left out: how many there were, and how many were heard right. */
  readonly asked: number;
  readonly right: number;
  /** How often the sentence was heard and the address was not. */
  readonly addressLost: number;
  readonly voice: VoiceIs;
  readonly room: RoomIs;
  /** In the middle of all sentences; null where no voice was heard. */
  readonly levels: SentenceLevels | null;
  readonly proposal: Proposal;
  /** Other addresses to take; empty where the present one is understood. */
  readonly offers: readonly string[];
};

/** At this many dB below full scale a sample is cut off for want of room. */
const overloadDb = -0.2;

/** Below these levels of the voice (dBFS while it speaks) it is very soft, soft, good; above all it is loud. */
const voiceDb = { verySoft: -52, soft: -38, good: -16 } as const;

/** So far above the noise (dB in the speech band) the voice stands in a quiet room, a noisy one, a loud one. */
const marginDb = { quiet: 25, noisy: 15, loud: 8 } as const;

/**
 * What there is to say of a check, however far it came.
 * @param before what an earlier check has set; null where nothing is set
 */
export function findingsOf({ results, address, floorsDb }: EarCheck, before: EarTuning | null): EarFindings {
  const asked = results.filter(({ outcome }) => outcome.kind !== "left-out");
  const count = (kind: CheckResult["outcome"]["kind"]): number =>
    asked.filter(({ outcome }) => outcome.kind === kind).length;
  const levels = levelsOf(asked);
  const addressLost = count("address-lost");
  return {
    asked: asked.length,
    right: count("right"),
    addressLost,
    voice: voiceOf(levels),
    room: roomOf(levels, median(floorsDb)),
    levels,
    proposal: proposedTuning(levels, before),
    offers: addressLost < confusedTimes ? [] : addresses.filter((other) => other !== address).slice(0, 2),
  };
}

/** The median of the cook's sentences; of whatever was heard, where none was understood at all. */
function levelsOf(results: readonly CheckResult[]): SentenceLevels | null {
  const isCook = ({ outcome: { kind } }: CheckResult): boolean =>
    kind === "right" || kind === "torn" || kind === "address-lost";
  const measured = (some: readonly CheckResult[]): readonly SentenceLevels[] =>
    some.flatMap(({ levels }) => levels ?? []);
  const cooks = measured(results.filter(isCook));
  const all = cooks.length > 0 ? cooks : measured(results);
  const [voice, band, peak] = [
    median(all.map((each) => each.voiceDb)),
    median(all.map((each) => each.bandDb)),
    median(all.map((each) => each.peakDb)),
  ];
  if (voice === null || band === null || peak === null) return null;
  const noiseDb = median(all.flatMap((each) => each.noiseDb ?? []));
  return { voiceDb: voice, bandDb: band, peakDb: peak, noiseDb };
}

function voiceOf(levels: SentenceLevels | null): VoiceIs {
  if (levels === null) return "unheard";
  if (levels.peakDb >= overloadDb) return "overloading";
  if (levels.voiceDb < voiceDb.verySoft) return "very-soft";
  if (levels.voiceDb < voiceDb.soft) return "soft";
  return levels.voiceDb <= voiceDb.good ? "good" : "loud";
}

/** Where no voice was heard, beside a typical one. */
function roomOf(levels: SentenceLevels | null, floorDb: number | null): RoomIs {
  const noiseDb = levels?.noiseDb ?? floorDb;
  if (noiseDb === null) return "unknown";
  const margin = (levels?.bandDb ?? typicalSpeechDb) - noiseDb;
  if (margin >= marginDb.quiet) return "quiet";
  if (margin >= marginDb.noisy) return "noisy";
  return margin >= marginDb.loud ? "loud" : "drowning";
}
