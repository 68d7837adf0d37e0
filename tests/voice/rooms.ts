import { listeningRate } from "../../core/speech/samples.ts";
import { convolve } from "./fft.ts";
import { createChance, type Chance } from "./seeded.ts";

/** A room and where the cook stands in it, seen from the microphone. */
export type RoomOptions = {
  /** How long sound takes to fall by 60 dB; a kitchen with its hard walls has 0.25 to 0.5 s. */
  readonly rt60S: number;
  /** From the mouth to the microphone. */
  readonly metres: number;
  readonly seed: number;
};

const soundMetresPerS = 343;
/** A mouth sends about twice as much forward as all round (common practice, no source). */
const mouthDirectivity = 2;

/**
 * What a kitchen does to a voice: the direct sound at once, six reflections from walls, floor and ceiling, and a tail
 * of noise that falls by 60 dB in `rt60S`. How much is direct follows from the distance: as much as all the rest at
 * the critical distance 0.057 sqrt(Q V / T), 6 dB less with each doubling (Kuttruff, Room Acoustics, chapter 5; from
 * memory). The time that the direct sound takes is left out, so words stay where they were.
 * @returns mono, 16 kHz, 1.1 times `rt60S` long, energy 1: the level stays about the same at every distance, so turn
 *   it down apart where the distance should be heard
 */
export function roomResponse({ rt60S, metres, seed }: RoomOptions): Float32Array {
  if (!(rt60S > 0) || !(metres > 0))
    throw new Error("A room has a reverberation time and a distance above 0.");
  const chance = createChance(seed);
  const sides = [chance.between(2.4, 4), chance.between(3.2, 5), chance.between(2.4, 2.8)] as const;
  const volume = sides[0] * sides[1] * sides[2];
  const critical = 0.057 * Math.sqrt((mouthDirectivity * volume) / rt60S);
  const reverberant = (metres / critical) ** 2; // against a direct energy of 1
  const out = new Float32Array(Math.ceil(1.1 * rt60S * listeningRate));
  const early = addReflections(out, chance, { sides, metres, rt60S });
  // Of what comes back no more than half is early: the tail begins with what the reflections have left.
  const earlyScale = Math.min(1, Math.sqrt((0.5 * reverberant) / early));
  for (const [at, sample] of out.entries()) out[at] = sample * earlyScale;
  addTail(out, chance, rt60S, reverberant - early * earlyScale ** 2);
  const restScale = Math.sqrt(reverberant / energyOf(out)); // where parts met by chance, the sum is not their sum
  const scale = 1 / Math.sqrt(1 + reverberant);
  return out.map((sample, at) => scale * (at === 0 ? 1 : restScale * sample));
}

function energyOf(samples: Float32Array): number {
  return samples.reduce((sum, sample) => sum + sample * sample, 0);
}

/** A recording as it arrives at the microphone, with the tail after it; convolved, 16 kHz. */
export function inRoom(speech: Float32Array, response: Float32Array): Float32Array {
  return convolve(speech, response);
}

type Walls = { readonly sides: readonly number[]; readonly metres: number; readonly rt60S: number };

/** Six first reflections, one from each side, weaker by their longer way and by what a wall takes; their energy. */
function addReflections(out: Float32Array, chance: Chance, { sides, metres, rt60S }: Walls): number {
  const [x = 1, y = 1, z = 1] = sides;
  const surface = 2 * (x * y + y * z + x * z);
  // Sabine: T = 0.161 V / (S a).
  const taken = Math.min(0.9, (0.161 * x * y * z) / (surface * rt60S));
  for (const side of sides)
    for (const wall of [chance.between(0.15, 0.5), chance.between(0.5, 0.85)]) {
      const way = Math.hypot(metres, 2 * side * wall);
      const at = Math.round(((way - metres) / soundMetresPerS) * listeningRate);
      const peak = (metres / way) * Math.sqrt(1 - taken);
      if (at <= 0 || at >= out.length) continue;
      out[at] = (out[at] ?? 0) + peak;
    }
  return energyOf(out);
}

/** Noise from 2 ms on, 60 dB quieter after `rt60S`, with a given energy. */
function addTail(out: Float32Array, chance: Chance, rt60S: number, energy: number): void {
  const from = Math.round(0.002 * listeningRate);
  const tail = new Float32Array(out.length);
  for (let at = from; at < tail.length; at++)
    tail[at] = chance.normal() * 10 ** ((-3 * at) / (rt60S * listeningRate));
  const scale = Math.sqrt(energy / energyOf(tail));
  for (const [at, sample] of tail.entries()) out[at] = (out[at] ?? 0) + scale * sample;
}
