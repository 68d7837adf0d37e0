import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { senseRoom, unknownRoom } from "../../core/speech/room-noise.ts";
import type { RoomNoise, RoomSecond } from "../../core/speech/room-noise.ts";

/** A noise that lasts this long is not over before the cook has looked at the screen: it is said. */
const saidAfterS = 20;

/** The sentence of the sign, once the noise lasts. */
export const tooLoudSentence =
  "Too loud to hear you. Turn the fan or tap down, or come closer; typing and tapping work.";

/** How loud the room is for the ear. */
export interface RoomSign {
  readonly noise: ReadonlySignal<RoomNoise>;
  /** Takes a second in which only the room and the cook were to be heard. */
  readonly take: (second: RoomSecond) => void;
  /** The ear is closed: nothing is known of the room. */
  readonly forget: () => void;
}

/**
 * Follows the room, and says once in a spell of noise that nothing can be heard.
 * @param remark says a sentence unasked
 * @param mayRemark whether that would disturb nobody now: no ring, no other sentence; else it is tried a second later
 */
export function createRoomSign(remark: (sentence: string) => void, mayRemark: () => boolean): RoomSign {
  const noise = signal<RoomNoise>("quiet");
  let sense = unknownRoom;
  let isSaid = false;
  return {
    noise,
    take: (second) => {
      sense = senseRoom(sense, second);
      noise.value = sense.noise;
      if (sense.tooLoudS === 0) isSaid = false;
      if (isSaid || sense.tooLoudS < saidAfterS || !mayRemark()) return;
      isSaid = true;
      remark(tooLoudSentence);
    },
    forget: () => {
      sense = unknownRoom;
      isSaid = false;
      noise.value = sense.noise;
    },
  };
}
