/** The middle one of some figures, the upper of two; null where there are none. */
export function median(values: readonly number[]): number | null {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? null;
}
