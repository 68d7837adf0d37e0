/** A copy with room for twice as much, and for `least` at least. */
export function longer(array: Int32Array<ArrayBuffer>, least = 0): Int32Array<ArrayBuffer> {
  const next = new Int32Array(Math.max(least, array.length * 2));
  next.set(array);
  return next;
}
