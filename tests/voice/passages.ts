import { type Register, registers } from "./chatter-frames-table.ts";
import { createChatterer } from "./chatter-sentences.ts";
import { createChance, type Chance } from "./seeded.ts";
import type { Voice } from "./synthetic-voices.ts";

/** A voice of tests/voice/synthetic-voices.ts, played so many times faster: another throat, pitch and pace. */
export type Talker = {
  readonly voice: Voice;
  readonly factor: number;
};

/** Some sentences in one way of talking by one talker, without a long pause. */
export type Passage = { readonly register: Register; readonly talker: Talker; readonly text: string };

/** How many sentences a passage of each kind has, from and to. */
const lengths: Readonly<Record<Register, readonly [number, number]>> = {
  kitchen: [1, 3],
  call: [2, 4],
  radio: [3, 7],
  children: [1, 3],
  guests: [1, 4],
  prose: [4, 7],
};

const quickVoices = ["rms", "slt", "awb", "kal16"] as const;
/** festival's take several times as long to speak: one passage in ten is theirs. */
const slowVoices = ["festival-slt", "festival-kal", "festival-ked"] as const;
/** As recorded more often than not: another pace costs a resampling. */
const paces = [1, 1, 1, 0.92, 1.1] as const;
const childPaces = [1.24, 1.32] as const;

/** Words a second that these talkers speak, pauses included: 3.09 in an hour of seed 3, 3.25 in others with shorter words. */
export const wordsASecond = 3.1;

/** Talk that commands no kitchen, without end, following from the seed. */
export function* passages(seed: number): Generator<Passage, never, undefined> {
  const chance = createChance(seed);
  const next = createChatterer(chance);
  for (;;) {
    const register = chance.pick(registers);
    const [fewest, most] = lengths[register];
    const count = fewest + chance.whole(most - fewest + 1);
    const text = Array.from({ length: count }, () => next(register)).join(" ");
    yield { register, talker: pickTalker(register, chance), text };
  }
}

function pickTalker(register: Register, chance: Chance): Talker {
  if (chance.even() < 0.1) return { voice: chance.pick(slowVoices), factor: 1 };
  if (register === "children")
    return { voice: chance.pick(["slt", "kal16"]), factor: chance.pick(childPaces) };
  return { voice: chance.pick(quickVoices), factor: chance.pick(paces) };
}
