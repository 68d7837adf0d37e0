/** A filter that keeps its state: one sample in, one sample out. */
export type Filter = (sample: number) => number;

type Coefficients = readonly [b0: number, b1: number, b2: number, a0: number, a1: number, a2: number];

/**
 * A second-order low-pass, high-pass or band-pass (0 dB at its middle).
 * @param corner corner or middle as a fraction of the sample rate, below 0.5
 * @param quality 0.707 is maximally flat; a band-pass is `corner / quality` wide
 * Source: R. Bristow-Johnson, Cookbook formulae for audio EQ biquad filter coefficients (W3C Note).
 */
export function createFilter(
  kind: "low-pass" | "high-pass" | "band-pass",
  corner: number,
  quality = Math.SQRT1_2,
): Filter {
  const cos = Math.cos(2 * Math.PI * corner);
  const alpha = Math.sin(2 * Math.PI * corner) / (2 * quality);
  const tail = [1 + alpha, -2 * cos, 1 - alpha] as const;
  switch (kind) {
    case "low-pass":
      return run([(1 - cos) / 2, 1 - cos, (1 - cos) / 2, ...tail]);
    case "high-pass":
      return run([(1 + cos) / 2, -1 - cos, (1 + cos) / 2, ...tail]);
    case "band-pass":
      return run([alpha, 0, -alpha, ...tail]);
  }
}

function run([b0, b1, b2, a0, a1, a2]: Coefficients): Filter {
  let s1 = 0;
  let s2 = 0;
  return (sample) => {
    const out = (b0 * sample + s1) / a0;
    s1 = b1 * sample - a1 * out + s2;
    s2 = b2 * sample - a2 * out;
    return out;
  };
}

/** Two filters, one after the other. */
export function inTurn(first: Filter, second: Filter): Filter {
  return (sample) => second(first(sample));
}
