/**
 * Lets `most` pass in any second, measured from the first one let through.
 * @returns a function that is told the time (epoch ms) and answers whether one more may pass
 */
export function rateLimit(most: number): (nowMs: number) => boolean {
  let passed: readonly number[] = [];
  return (nowMs) => {
    passed = passed.filter((at) => nowMs - at < 1000);
    if (passed.length >= most) return false;
    passed = [...passed, nowMs];
    return true;
  };
}
