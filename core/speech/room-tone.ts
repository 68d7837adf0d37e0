/** Loudness of the tone in dBFS: softer than any room a microphone hears, louder than nothing. */
export const roomToneDbfs = -76;

/**
 * Lays a faint steady hiss under a stream. Digital silence, from a file or a browser's noise gate, is like no room
 * the acoustic model was trained in: it was taken for an "s", and the sentence after it for chatter.
 * The hiss is the same for every stream (a linear congruential generator, constants of Numerical Recipes, 2nd ed.,
 * section 7.1), so that a recording is heard the same each time.
 */
export function createRoomTone(dbfs = roomToneDbfs): (samples: Float32Array) => Float32Array {
  const peak = Math.sqrt(3) * 10 ** (dbfs / 20); // of evenly spread noise with this root mean square
  let seed = 1;
  return (samples) =>
    samples.map((sample) => {
      seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
      return sample + peak * (seed / 0x8000_0000 - 1);
    });
}
