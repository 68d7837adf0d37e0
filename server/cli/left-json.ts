import type { House } from "../../core/house/house.ts";
import type { Leftover } from "../../core/house/leftover.ts";
import { firstToUse, isToEat, standingOf, type Standing } from "../../core/house/standing.ts";
import { sources } from "../../core/keeping/sources-table.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { toNumber } from "../../core/units/rational.ts";
import { leftCaution } from "./left-words.ts";

interface LeftJson {
  readonly id: string;
  readonly name: string;
  /** The dish that it is of; null: it was put in under its name alone. */
  readonly dish: string | null;
  /** Of what was heated: where it was. */
  readonly place: "fridge" | "freezer";
  /** null: not known. */
  readonly servings: number | null;
  readonly servingsOf: string;
  /** In the cook's own words where the servings are not known; else null. */
  readonly amount: string | null;
  readonly storedAt: string;
  readonly useBy: string;
  readonly source: string;
  /** Whether it is known what is in it; otherwise the strictest figure was taken. */
  readonly isKnown: boolean;
  /** null: it is cold. */
  readonly heatedAt: string | null;
  readonly standing: Standing;
}

/** What is left, for another program; moments are ISO 8601 in UTC. */
export interface FridgeJson {
  readonly now: string;
  /** The first to use first. */
  readonly left: readonly LeftJson[];
  /** The id of what to use first; null: nothing is good. */
  readonly useFirst: string | null;
  /** The ids of what was kept too long, or was heated more than two hours ago. */
  readonly throwAway: readonly string[];
  readonly caution: string;
}

const moment = (at: Instant): string => new Date(at).toISOString();

const leftJson = (leftover: Leftover, now: Instant): LeftJson => ({
  id: leftover.id,
  name: leftover.name,
  dish: leftover.of?.dish ?? null,
  place: leftover.place,
  servings: leftover.rest.kind === "servings" ? toNumber(leftover.rest.servings) : null,
  servingsOf: leftover.servingsOf,
  amount: leftover.rest.kind === "words" ? leftover.rest.words : null,
  storedAt: moment(leftover.storedAt),
  useBy: moment(leftover.useBy),
  source: sources[leftover.source].name,
  isKnown: leftover.isKnown,
  heatedAt: leftover.heatedAt === null ? null : moment(leftover.heatedAt),
  standing: standingOf(leftover, now),
});

/** What is left as `left --json` prints it. */
export function fridgeJson({ leftovers }: House, now: Instant): FridgeJson {
  const all = firstToUse(leftovers);
  const isOver = (one: Leftover): boolean => ["spent", "heated-long"].includes(standingOf(one, now));
  return {
    now: moment(now),
    left: all.map((one) => leftJson(one, now)),
    useFirst: all.find((one) => standingOf(one, now) === "heated" || isToEat(one, now))?.id ?? null,
    throwAway: all.filter(isOver).map(({ id }) => id),
    caution: leftCaution,
  };
}
