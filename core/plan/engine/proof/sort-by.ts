/** Puts the first `count` of a list in the order of their keys, in place; quick where it is nearly in order already. */
export function sortBy(order: Int32Array, count: number, key: Int32Array): void {
  for (let index = 1; index < count; index += 1) {
    const part = order[index] ?? 0;
    const value = key[part] ?? 0;
    let at = index - 1;
    while (at >= 0 && (key[order[at] ?? 0] ?? 0) > value) {
      order[at + 1] = order[at] ?? 0;
      at -= 1;
    }
    order[at + 1] = part;
  }
}
