/** Zero crossings of the kernel on each side: 16 keep the pass band flat to 0.1 dB up to 90 % of the band. */
const crossings = 16;
const phasesPerSample = 512;

/**
 * A streaming resampler from any rate to any other: a windowed-sinc kernel (Kaiser, beta 8: about 80 dB down in
 * the stop band) read at fractional positions, low-passed at the lower of the two Nyquist rates.
 * Blocks may have any length; what the kernel still needs is kept for the next block, so the output lags by half
 * the kernel (at most 1 ms at 16 kHz and above) and the stream begins with silence before it.
 * @param from rate of the blocks in Hz
 * @param to rate of the output in Hz
 */
export function createResampler(from: number, to: number): (block: Float32Array) => Float32Array {
  if (from === to) return (block) => block;
  const scale = Math.min(1, to / from);
  const reach = Math.ceil(crossings / scale);
  const kernel = kernelTable(reach, scale);
  const step = from / to;
  let held = new Float32Array(reach);
  let position = reach; // of the next output sample, counted in input samples from the start of `held`
  return (block) => {
    const input = new Float32Array(held.length + block.length);
    input.set(held);
    input.set(block, held.length);
    const count = Math.max(0, Math.ceil((input.length - reach - position) / step));
    const output = new Float32Array(count);
    for (let at = 0; at < count; at++) output[at] = sampleAt(input, position + at * step, kernel, reach);
    position += count * step;
    const keepFrom = Math.min(input.length, Math.max(0, Math.floor(position) - reach));
    held = input.slice(keepFrom);
    position -= keepFrom;
    return output;
  };
}

/** Resamples a whole recording at once, without the lag: equal in length up to rounding, aligned in time. */
export function resample(samples: Float32Array, from: number, to: number): Float32Array {
  if (from === to) return samples;
  const padded = new Float32Array(samples.length + Math.ceil(crossings * Math.max(1, from / to)) + 1);
  padded.set(samples);
  return createResampler(from, to)(padded).subarray(0, Math.round((samples.length * to) / from));
}

function sampleAt(input: Float32Array, position: number, kernel: Float32Array, reach: number): number {
  const whole = Math.floor(position);
  const centre = reach * phasesPerSample;
  let sum = 0;
  for (let at = whole - reach + 1; at <= whole + reach; at++) {
    const distance = Math.round((at - position) * phasesPerSample);
    sum += (input[at] ?? 0) * (kernel[centre + distance] ?? 0);
  }
  return sum;
}

function kernelTable(reach: number, scale: number): Float32Array {
  const half = reach * phasesPerSample;
  return Float32Array.from({ length: 2 * half + 1 }, (_, at) => {
    const x = (at - half) / phasesPerSample;
    const window = besselI0(8 * Math.sqrt(Math.max(0, 1 - (x / reach) ** 2))) / besselI0(8);
    const angle = Math.PI * x * scale;
    return scale * (angle === 0 ? 1 : Math.sin(angle) / angle) * window;
  });
}

/** The modified Bessel function of the first kind, order 0, by its power series. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-12; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
