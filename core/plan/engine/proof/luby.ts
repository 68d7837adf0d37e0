/** Luby's sequence, 1 1 2 1 1 2 4 ...: how long to search before starting anew, when nothing is known about it. */
export function luby(index: number): number {
  let [size, power, at] = [1, 0, index];
  while (size < index + 1) {
    power += 1;
    size = 2 * size + 1;
  }
  while (size - 1 !== at) {
    size = (size - 1) >> 1;
    power -= 1;
    at %= size;
  }
  return 2 ** power;
}
