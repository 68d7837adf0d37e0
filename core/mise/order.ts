import { normaliseFood } from "../food/names.ts";
import { minutes, plus } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { Place } from "./preparation-words-table.ts";

/** What is reckoned for one preparation, so that the order can tell what costs time. Common practice, no source. */
const each = minutes(2);

/** What the order asks of a preparation. */
export interface Due {
  readonly food: string;
  /** The first need. */
  readonly neededAt: Instant;
  /** "raw": on a board of its own. null: nothing we know is done to it. */
  readonly place: Place | "raw" | null;
}

/** By how many milliseconds each would be late, done one after the other from `now` on. */
export function lateness(list: readonly Due[], now: Instant): ReadonlyMap<Due, number> {
  let done = now;
  return new Map(
    list.map((one) => {
      done = plus(done, each);
      return [one, Math.max(0, done - one.neededAt)];
    }),
  );
}

const isSameFood = (a: Due, b: Due): boolean => normaliseFood(a.food) === normaliseFood(b.food);

/** Whether the second order makes nothing later than the first one makes it. */
function costsNothing(before: readonly Due[], after: readonly Due[], now: Instant): boolean {
  const was = lateness(before, now);
  return [...lateness(after, now)].every(([one, late]) => late <= (was.get(one) ?? 0));
}

/**
 * What is needed first comes first. The same food, and then what is done in the same place, is drawn forward to stand
 * behind its like where that makes nothing late, or later than it would be anyhow.
 */
export function inOrder<T extends Due>(list: readonly T[], now: Instant): readonly T[] {
  const done: T[] = [];
  let rest = list.toSorted((a, b) => a.neededAt - b.neededAt);
  for (let [next] = rest; next !== undefined; [next] = rest) {
    const last = done.at(-1);
    const likes =
      last === undefined
        ? []
        : [rest.find((one) => isSameFood(one, last)), rest.find(({ place }) => place === last.place)];
    const drawn = likes.find((like) => {
      if (like === undefined) return false;
      const others = rest.filter((one) => one !== like);
      return costsNothing([...done, ...rest], [...done, like, ...others], now);
    });
    const taken = drawn ?? next;
    done.push(taken);
    rest = rest.filter((one) => one !== taken);
  }
  return done;
}
