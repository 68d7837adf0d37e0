import { err, ok } from "../units/result.ts";
import type { Result } from "../units/result.ts";
import type { WantedHappening } from "./events.ts";
import type { House } from "./house.ts";
import type { WantedOrder } from "./orders.ts";
import type { HouseRefusal } from "./refusal.ts";
import { keyOfThing, mostThingLetters } from "./wanted.ts";

type Decision = Result<readonly WantedHappening[], HouseRefusal>;

/** What is wanted from the shop, and what has become of it. */
export function decideWanted(order: WantedOrder, { wanted }: House): Decision {
  if (order.type === "ClearBought") {
    const isBought = [...wanted.values()].some(({ boughtAt }) => boughtAt !== null);
    return ok(isBought ? [{ type: "BoughtCleared" }] : []);
  }
  const name = order.name.trim().replace(/\s+/g, " ");
  const thing = keyOfThing(name);
  if (thing === "" || name.length > mostThingLetters) return err({ code: "NoThing" });
  const known = wanted.get(thing);
  if (order.type === "WantThing") {
    return known?.boughtAt === null
      ? err({ code: "WantedAlready", name: known.name })
      : ok([{ type: "ThingWanted", thing, name }]);
  }
  if (known === undefined) return err({ code: "NotWanted", name });
  switch (order.type) {
    case "DropThing":
      return ok([{ type: "ThingDropped", thing }]);
    case "BuyThing":
      return known.boughtAt === null
        ? ok([{ type: "ThingBought", thing }])
        : err({ code: "BoughtAlready", name: known.name });
    case "UnbuyThing":
      return known.boughtAt === null
        ? err({ code: "NotBought", name: known.name })
        : ok([{ type: "ThingNotBought", thing }]);
  }
}
