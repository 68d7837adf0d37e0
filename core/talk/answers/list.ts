import { lastHouseDeed } from "../../house/decide.ts";
import type { HouseOrder } from "../../house/orders.ts";
import { mostThingLetters, thingIs } from "../../house/wanted.ts";
import type { WantedThings } from "../../house/wanted.ts";
import { leftToBuy, listAtHand, tickedAfter, ticking, unticking } from "../../shop/at-hand.ts";
import type { DeviceList, HandLine, ListAtHand, ListOrder } from "../../shop/at-hand.ts";
import { asksWhich, isWithin } from "../find.ts";
import type { Intent, IntentOf, Mention } from "../intent.ts";
import { foodNames, withNumbers } from "../names.ts";
import type { Outcome } from "../outcome.ts";
import { told } from "../outcome.ts";
import { sayParts } from "../speech.ts";
import { orderedInHouse } from "./left.ts";
import type { Cupboard } from "./left.ts";
import { isThing, listParts, sayAlready, sayCount, sayLeft } from "./list-words.ts";

/** The whole list as answers need it; null where nothing is on it. */
const listOf = ({ house, list }: Cupboard): ListAtHand | null => listAtHand(list.made, house.wanted);

const linesOf = (cupboard: Cupboard): readonly HandLine[] => listOf(cupboard)?.lines ?? [];

/** The same list once the orders of a tick are carried out. */
function leftAfter({ list: { made } }: Cupboard, orders: readonly ListOrder[], wanted: WantedThings): number {
  const then = made === null ? null : { ...made, ticked: orders.reduce(tickedAfter, made.ticked) };
  const list = listAtHand(then, wanted);
  return list === null ? 0 : leftToBuy(list).length;
}

function matching(what: Mention, lines: readonly HandLine[]): readonly HandLine[] {
  if (what.by === "line") return lines.filter(({ id }) => id === what.line);
  const said = what.by === "words" ? what.words : "";
  const tries = [
    lines.filter((line) => withNumbers(line.name).includes(said) || isThing(line, said)),
    lines.filter(({ name }) => foodNames(name).includes(said)),
    lines.filter(({ name }) => isWithin(said, name)),
  ];
  return tries.find((hits) => hits.length > 0) ?? [];
}

const wordsOf = (what: Mention | null): string => (what?.by === "words" ? what.words : "");

/** Finds the line that is meant among some and goes on with it, asks which one, or says what there is to say. */
function withLine(
  what: Mention | null,
  lines: readonly HandLine[],
  again: (what: Mention) => Intent,
  go: (line: HandLine) => Outcome,
  none: () => Outcome,
): Outcome {
  const hits = what === null ? [] : matching(what, lines);
  const [only] = hits;
  if (only === undefined) return none();
  if (hits.length === 1) return go(only);
  return asksWhich(hits.map(({ id, name }) => ({ name, intent: again({ by: "line", line: id }) })));
}

/** What is said to be needed, and no shop has. */
const notForSale: ReadonlySet<string> = new Set(["time", "minutes", "minute", "help", "hands", "luck"]);

/** "Add lemons to the list", "we are out of nutmeg". */
export function putOnList({ what }: IntentOf<"PutOnList">, cupboard: Cupboard): Outcome {
  const name = wordsOf(what);
  if (notForSale.has(name)) return told("No shop sells that. Say what is missing, like lemons.");
  if (name === "") return told("Say what to put on the list, like lemons.");
  if (name.length > mostThingLetters) return told("That is more than a line holds. Say it in fewer words.");
  const line = linesOf(cupboard).find((one) => one.kind === "buy" && !one.isTicked && isThing(one, name));
  if (line?.wanted !== undefined && line.wanted !== null) return told(sayAlready(line));
  // What a meal takes is noted as well: the list of that meal is this device's alone.
  return orderedInHouse(cupboard, [{ type: "WantThing", name }], () =>
    told(line === undefined ? `${thingIs(name)} on the list.` : sayAlready(line)),
  );
}

/** "Take lemons off the list": what the cook wanted; what a meal takes is ticked off instead. */
export function takeOffList(intent: IntentOf<"TakeOffList">, cupboard: Cupboard): Outcome {
  const lines = linesOf(cupboard);
  return withLine(
    intent.what,
    lines.filter(({ wanted }) => wanted !== null),
    (what) => ({ ...intent, what }),
    ({ name, wanted, isOwn }) =>
      orderedInHouse(cupboard, [{ type: "DropThing", name: wanted?.name ?? name }], () =>
        told(isOwn ? `${thingIs(name)} on the list for the meal alone.` : `${thingIs(name)} off the list.`),
      ),
    () => {
      const [line] = intent.what === null ? [] : matching(intent.what, lines);
      return line === undefined
        ? notThere(intent.what)
        : told(`${thingIs(line.name)} on the list for a meal. Tick it off if you have it.`);
    },
  );
}

const notThere = (what: Mention | null): Outcome => {
  const name = wordsOf(what);
  return told(name === "" ? "I do not know what you mean." : `${thingIs(name)} not on the list.`);
};

/** "What is on the list?": what is still to be bought, by place in the shop. */
export function askList(cupboard: Cupboard): Outcome {
  const list = listOf(cupboard);
  const open = linesOf(cupboard).filter(({ isTicked }) => !isTicked);
  if (list === null) return told('Nothing is on the list. Say "add lemons to the list".');
  const left = leftToBuy(list).length;
  if (open.length === 0) return told("All of it is in the bag.");
  return sayParts(listParts(left === 0 ? "Nothing more to buy." : sayCount(left), open));
}

/** "I have the lemons": into the bag. */
export function inTheBag(intent: IntentOf<"InTheBag">, cupboard: Cupboard): Outcome {
  const lines = linesOf(cupboard);
  return withLine(
    intent.what,
    lines.filter(({ isTicked }) => !isTicked),
    (what) => ({ ...intent, what }),
    (line) => {
      const { list, house } = ticking(line);
      const done = orderedInHouse(cupboard, house, ({ wanted }) => {
        const left = line.kind === "buy" ? sayLeft(leftAfter(cupboard, list, wanted)) : "";
        return told(`${thingIs(line.name)} in the bag. ${left}`.trim());
      });
      return { ...done, list };
    },
    () => {
      const [line] = intent.what === null ? [] : matching(intent.what, lines);
      return line === undefined ? notThere(intent.what) : told(`${thingIs(line.name)} in the bag already.`);
    },
  );
}

/** "Untick the lemons": back on the list. */
export function notInTheBag(intent: IntentOf<"NotInTheBag">, cupboard: Cupboard): Outcome {
  const lines = linesOf(cupboard);
  return withLine(
    intent.what,
    lines.filter(({ isTicked }) => isTicked),
    (what) => ({ ...intent, what }),
    (line) => {
      const { list, house } = unticking(line);
      const done = orderedInHouse(cupboard, house, ({ wanted }) =>
        told(`${thingIs(line.name)} on the list again. ${sayLeft(leftAfter(cupboard, list, wanted))}`),
      );
      return { ...done, list };
    },
    () => {
      const [line] = intent.what === null ? [] : matching(intent.what, lines);
      return line === undefined ? notThere(intent.what) : told(`${thingIs(line.name)} not in the bag.`);
    },
  );
}

/** Where the house knows of the tick as its last deed that one is taken back: undone once more, undo means the one before. */
function backInHouse(line: HandLine, { log, kitchen }: Cupboard): readonly HouseOrder[] {
  const { house } = line.isTicked ? unticking(line) : ticking(line);
  const happening = lastHouseDeed(log, kitchen.now)?.happening;
  const isIt =
    (happening?.type === "ThingBought" || happening?.type === "ThingNotBought") &&
    happening.thing === line.wanted?.key;
  return isIt ? [{ type: "UndoLast" }] : house;
}

/** Takes the last tick of this device back, in the house too. */
export function undoTick(tick: NonNullable<DeviceList["lastTick"]>, cupboard: Cupboard): Outcome {
  const line = linesOf(cupboard).find(({ id }) => id === tick.line);
  if (line === undefined) return { ...told("Undone."), list: [{ type: "UndoTick" }] };
  const done = orderedInHouse(cupboard, backInHouse(line, cupboard), () =>
    told(
      `Undone: ${thingIs(line.name).toLowerCase()} ${line.isTicked ? "on the list again" : "in the bag"}.`,
    ),
  );
  return { ...done, list: [{ type: "UndoTick" }] };
}

/** What undoing the last wish or purchase in the house has brought about; null where it was none. */
export function sayUndone(before: WantedThings, after: WantedThings): string | null {
  const known = (things: WantedThings, key: string) => [...things.values()].find((one) => one.key === key);
  const changed = [...new Map([...before, ...after]).values()].filter(
    ({ key }) => known(before, key)?.boughtAt !== known(after, key)?.boughtAt,
  );
  const [one] = changed;
  if (one === undefined) return null;
  if (changed.length > 1) return "Undone: what was in the bag is shown again.";
  const now = known(after, one.key);
  const where =
    now === undefined ? "off the list" : now.boughtAt === null ? "on the list again" : "in the bag";
  return `Undone: ${thingIs(one.name).toLowerCase()} ${where}.`;
}
