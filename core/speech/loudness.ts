/**
 * Root-mean-square loudness of one block.
 * @param block mono samples in [-1, 1], any length
 * @returns dB below full scale, where a full-scale square wave is 0 and a full-scale sine -3.01;
 *   -Infinity for silence or an empty block, so compare, don't average
 */
export function loudness(block: Float32Array): number {
  if (block.length === 0) return -Infinity;
  let power = 0;
  for (const sample of block) power += sample * sample;
  return 10 * Math.log10(power / block.length);
}

/**
 * A filter that takes a constant offset out of a stream (cheap sound cards add one, and it hides silence):
 * a one-pole high-pass, -3 dB at `cornerHz`, keeping its state from block to block.
 */
export function createOffsetFilter(rate: number, cornerHz = 20): (block: Float32Array) => Float32Array {
  const pole = Math.exp((-2 * Math.PI * cornerHz) / rate);
  let before = 0;
  let out = 0;
  let isFirst = true;
  return (block) =>
    block.map((sample) => {
      if (isFirst) before = sample; // else the offset itself would sound as a click
      isFirst = false;
      out = sample - before + pole * out;
      before = sample;
      return out;
    });
}

/**
 * Loudness of a stream in the band where speech lies and a kitchen hums less: 250 to 3,500 Hz, by a second-order
 * high-pass and low-pass (Butterworth, by the bilinear transform), keeping their state from block to block.
 */
export function createSpeechMeter(rate: number): (block: Float32Array) => number {
  const high = createBiquad("high-pass", 250 / rate);
  const low = createBiquad("low-pass", 3500 / rate);
  return (block) => loudness(block.map((sample) => low(high(sample))));
}

/** Source of the coefficients: R. Bristow-Johnson, Cookbook formulae for audio EQ biquad filter coefficients (W3C Note). */
function createBiquad(kind: "high-pass" | "low-pass", corner: number): (sample: number) => number {
  const w = 2 * Math.PI * corner;
  const cos = Math.cos(w);
  const alpha = Math.sin(w) / Math.SQRT2;
  const a0 = 1 + alpha;
  const edge = (kind === "high-pass" ? 1 + cos : 1 - cos) / a0;
  const b0 = edge / 2;
  const b1 = kind === "high-pass" ? -edge : edge;
  const a1 = (-2 * cos) / a0;
  const a2 = (1 - alpha) / a0;
  let s1 = 0;
  let s2 = 0;
  return (sample) => {
    const out = b0 * sample + s1;
    s1 = b1 * sample - a1 * out + s2;
    s2 = b0 * sample - a2 * out;
    return out;
  };
}
