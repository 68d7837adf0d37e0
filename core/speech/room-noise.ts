import { noiseFloor } from "./endpointer.ts";

/** How loud the room is beside the cook's voice: "too-loud" is where most of what is said is lost. */
export type RoomNoise = "quiet" | "loud" | "too-loud";

/** One second of the room, in dBFS of the speech band. */
export type RoomSecond = {
  /** The level that a tenth of the second stays below: what never stops, not a clatter and not a voice. */
  readonly floorDb: number;
  /** How loud the cook's last accepted sentences were; null before the first. */
  readonly speechDb: number | null;
};

/** @param levelsDb of the second's frames, in dBFS of the speech band */
export function roomSecond(levelsDb: readonly number[], speechDb: number | null): RoomSecond {
  return { floorDb: noiseFloor(levelsDb), speechDb };
}

/** What is known of the room. */
export type RoomSense = {
  readonly noise: RoomNoise;
  /** For how many seconds it has been too loud without a break; 0 while it is not. */
  readonly tooLoudS: number;
  /** What each of the last seconds was by itself, oldest first. */
  readonly recent: readonly RoomNoise[];
};

/** A room that nothing was heard of: quiet until it shows otherwise. */
export const unknownRoom: RoomSense = { noise: "quiet", tooLoudS: 0, recent: [] };

/**
 * What a voice is taken for before the first sentence was accepted, in dBFS of the speech band. Telephony levels speech
 * to -26 dBov (ITU-T G.100.1; the figure from memory), and a browser's automatic gain is taken to do about the same;
 * in the band the loud frames of three voices built from people's recordings were 4 to 5 dB below their level as a whole.
 */
export const typicalSpeechDb = -31;

/**
 * How far a voice stands above the floor, in dB, below which it is lost or needs care. Under a synthetic fan and tap
 * the endpointer found all of twelve sentences at 5 dB and half of them at 0 dB, with this margin within 1 dB of the
 * signal-to-noise ratio.
 */
const marginsDb = { tooLoud: 4, loud: 10 } as const;

/** Below this a room is quiet whatever the voice: it is the voice then that is soft, and no tap to be turned down. */
const quietRoomDb = -55;

/** A sign comes after so many seconds alike and goes after so many: a clatter of a second changes nothing. */
const secondsToAppear = 3;
const secondsToGo = 5;

const order: readonly RoomNoise[] = ["quiet", "loud", "too-loud"];
const rank = (noise: RoomNoise): number => order.indexOf(noise);

/**
 * Takes one more second. It becomes louder only as far as each of the last three seconds was, and quieter only as far
 * as each of the last five.
 */
export function senseRoom(sense: RoomSense, second: RoomSecond): RoomSense {
  const recent = [...sense.recent, noiseOf(second)].slice(-secondsToGo);
  const least = recent.length < secondsToAppear ? 0 : Math.min(...recent.slice(-secondsToAppear).map(rank));
  const most = recent.length < secondsToGo ? rank(sense.noise) : Math.max(...recent.map(rank));
  const noise = order[Math.min(Math.max(rank(sense.noise), least), Math.max(most, least))] ?? "quiet";
  return { noise, tooLoudS: noise === "too-loud" ? sense.tooLoudS + 1 : 0, recent };
}

function noiseOf({ floorDb, speechDb }: RoomSecond): RoomNoise {
  if (floorDb < quietRoomDb) return "quiet";
  const marginDb = (speechDb ?? typicalSpeechDb) - floorDb;
  if (marginDb < marginsDb.tooLoud) return "too-loud";
  return marginDb < marginsDb.loud ? "loud" : "quiet";
}
