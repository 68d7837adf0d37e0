/** "ring" is a timer that rings or something that cannot wait; "answer" answers the cook; "cue" is said unasked. */
export type Priority = "ring" | "answer" | "cue";

const order: Readonly<Record<Priority, number>> = { ring: 0, answer: 1, cue: 2 };

/** Whether the one may cut the other short. */
export function outranks(one: Priority, other: Priority): boolean {
  return order[one] < order[other];
}

/** What waits to be said: by priority, then as it came. */
export interface SpeechQueue<T extends { readonly priority: Priority }> {
  readonly add: (item: T) => void;
  /** Puts one that was cut short before all others of its priority. */
  readonly putBack: (item: T) => void;
  readonly take: () => T | undefined;
  /** Empties the queue. */
  readonly clear: () => readonly T[];
  readonly size: () => number;
}

/** An empty queue. */
export function speechQueue<T extends { readonly priority: Priority }>(): SpeechQueue<T> {
  const items: T[] = [];
  const insert = (item: T, at: number): void => {
    items.splice(at < 0 ? items.length : at, 0, item);
  };
  return {
    add: (item) => {
      insert(
        item,
        items.findIndex((other) => outranks(item.priority, other.priority)),
      );
    },
    putBack: (item) => {
      insert(
        item,
        items.findIndex((other) => !outranks(other.priority, item.priority)),
      );
    },
    take: () => items.shift(),
    clear: () => items.splice(0),
    size: () => items.length,
  };
}
