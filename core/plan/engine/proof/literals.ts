/** A list of literals (node, value, node, value, ...) that is filled again and again without making garbage. */
export class Literals {
  readonly array: Int32Array;
  /** How many numbers of the array count: twice the literals. */
  count = 0;

  /** @param most how many literals it may have to hold */
  constructor(most: number) {
    this.array = new Int32Array(2 * most);
  }

  /** Adds "the bound of this node is at least that value". */
  add(node: number, value: number): void {
    this.array[this.count] = node;
    this.array[this.count + 1] = value;
    this.count += 2;
  }
}
