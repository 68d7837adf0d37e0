import { between } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import type { WantedHappening } from "./events.ts";
import { boughtStaysFor } from "./wanted.ts";
import type { ThingKey, WantedThing, WantedThings } from "./wanted.ts";

type Entry = readonly [ThingKey, WantedThing];

/** What did happen to what is wanted. Total. */
export function evolveWanted(wanted: WantedThings, happening: WantedHappening, at: Instant): WantedThings {
  switch (happening.type) {
    case "ThingWanted": {
      const { thing, name } = happening;
      const others = lately(wanted, at).filter(([key]) => key !== thing);
      return new Map([...others, [thing, { key: thing, name, boughtAt: null }]]);
    }
    case "ThingDropped":
      return new Map([...wanted].filter(([key]) => key !== happening.thing));
    case "ThingBought":
      return marked(new Map(lately(wanted, at)), happening.thing, at);
    case "ThingNotBought":
      return marked(wanted, happening.thing, null);
    case "BoughtCleared":
      return new Map([...wanted].filter(([, { boughtAt }]) => boughtAt === null));
  }
}

const lately = (wanted: WantedThings, at: Instant): readonly Entry[] =>
  [...wanted].filter(([, { boughtAt }]) => boughtAt === null || between(boughtAt, at) <= boughtStaysFor);

function marked(wanted: WantedThings, thing: ThingKey, boughtAt: Instant | null): WantedThings {
  const before = wanted.get(thing);
  return before === undefined ? wanted : new Map(wanted).set(thing, { ...before, boughtAt });
}
