/** Complex values, real and imaginary parts apart, a power of two of them. */
export type Spectrum = { readonly re: Float64Array; readonly im: Float64Array };

/** The spectrum of real samples, padded with silence up to `size`, which is a power of two. */
export function spectrumOf(samples: Float32Array, size: number): Spectrum {
  const re = new Float64Array(size);
  re.set(samples);
  const im = new Float64Array(size);
  transform(re, im);
  return { re, im };
}

/** Transforms in place (Cooley and Tukey, radix 2, decimation in time); forward, unscaled. */
export function transform(re: Float64Array, im: Float64Array): void {
  const size = re.length;
  if (size < 2 || (size & (size - 1)) !== 0) throw new Error(`${size} is no power of two.`);
  reorder(re, im);
  for (let half = 1; half < size; half *= 2) {
    for (let k = 0; k < half; k++) {
      const cos = Math.cos((Math.PI * k) / half);
      const sin = -Math.sin((Math.PI * k) / half);
      for (let low = k; low < size; low += 2 * half) {
        const high = low + half;
        const hr = re[high] ?? 0;
        const hi = im[high] ?? 0;
        const turnedRe = hr * cos - hi * sin;
        const turnedIm = hr * sin + hi * cos;
        const lr = re[low] ?? 0;
        const li = im[low] ?? 0;
        re[high] = lr - turnedRe;
        im[high] = li - turnedIm;
        re[low] = lr + turnedRe;
        im[low] = li + turnedIm;
      }
    }
  }
}

function reorder(re: Float64Array, im: Float64Array): void {
  for (let at = 1, to = 0; at < re.length; at++) {
    let bit = re.length >> 1;
    for (; (to & bit) !== 0; bit >>= 1) to ^= bit;
    to ^= bit;
    if (at >= to) continue;
    for (const list of [re, im]) {
      const kept = list[at] ?? 0;
      list[at] = list[to] ?? 0;
      list[to] = kept;
    }
  }
}

/**
 * One sound through a response, by overlap and add.
 * @returns `samples.length + response.length - 1` samples
 */
export function convolve(samples: Float32Array, response: Float32Array): Float32Array {
  let size = 1024;
  while (size < 2 * response.length) size *= 2;
  const block = size - response.length + 1;
  const through = spectrumOf(response, size);
  const out = new Float32Array(samples.length + response.length - 1);
  for (let start = 0; start < samples.length; start += block) {
    const { re, im } = spectrumOf(samples.subarray(start, start + block), size);
    for (let k = 0; k < size; k++) {
      const a = re[k] ?? 0;
      const b = im[k] ?? 0;
      const c = through.re[k] ?? 0;
      const d = through.im[k] ?? 0;
      re[k] = a * c - b * d;
      im[k] = -(a * d + b * c); // conjugate: the forward transform of it is the inverse one
    }
    transform(re, im);
    const end = Math.min(out.length, start + size);
    for (let at = start; at < end; at++) out[at] = (out[at] ?? 0) + (re[at - start] ?? 0) / size;
  }
  return out;
}
