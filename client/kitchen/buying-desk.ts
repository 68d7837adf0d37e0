import { computed, signal } from "@preact/signals";
import * as z from "zod/mini";
import { buyingPath } from "../../core/sync/buying-path.ts";
import type { BuyingRequest } from "../../core/sync/buying-request.ts";
import { ownLine, tickedAfter } from "../../core/shop/at-hand.ts";
import type { DeviceList, ListOrder } from "../../core/shop/at-hand.ts";
import type { WrittenList } from "../../core/shop/written-list.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { parseJson, readItem } from "../storage/kept-log.ts";
import type { BuyingDesk, HandedOver, KeptList } from "./buying-model.ts";

const line = z.object({
  id: z.string(),
  name: z.string(),
  buy: z.string(),
  note: z.string(),
  shares: z.string(),
});

const list = z.object({
  title: z.string(),
  dishes: z.array(z.string()),
  // A list that was kept before it told of the fridge.
  fridge: z._default(z.array(z.string()), []),
  useFirst: z.array(z.string()),
  sections: z.array(
    z.object({
      kind: z.enum(["buy", "if-you-like", "look", "enough"]),
      name: z.string(),
      lines: z.array(line),
    }),
  ),
  notNeeded: z.array(z.string()),
});

const mistakes = z.array(z.object({ line: z.number(), sentence: z.string() }));

const answer = z.object({ list, mistakes });

const keptList = z.object({
  id: z.string(),
  list,
  wanted: z.object({
    meals: z.array(
      z.object({
        meal: z.string(),
        servings: z.record(z.string(), z.number()),
        // A list that was kept before something could be taken for something else.
        swaps: z._default(
          z.array(z.object({ dish: z.string(), ingredient: z.string(), use: z.string() })),
          [],
        ),
      }),
    ),
    house: z.string(),
  }),
  mistakes,
  own: z.array(z.string()),
  ticked: z.array(z.string()),
});

const key = "stovecall.buying";

const away = "The server does not answer, so no list can be made. One that was made before stays here.";

function readKept(): KeptList | null {
  const kept = keptList.safeParse(parseJson(readItem(key) ?? "null"));
  return kept.success ? kept.data : null;
}

type Asked = { readonly sentence: string } | z.infer<typeof answer>;

async function ask(wanted: BuyingRequest): Promise<Asked> {
  const response = await fetch(buyingPath, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(wanted),
  }).catch(() => null);
  if (response === null) return { sentence: away };
  const told: unknown = await response.json().catch(() => null);
  const read = answer.safeParse(told);
  if (response.ok && read.success) return read.data;
  const refused = z.object({ error: z.string() }).safeParse(told);
  return { sentence: refused.success ? refused.data.error : away };
}

/** The lines that are bought as they were before: what is ticked of another amount is not in the bag yet. */
function stillTicked(before: KeptList, now: WrittenList): readonly string[] {
  const linesOf = ({ sections }: WrittenList) => sections.flatMap(({ lines }) => lines);
  const bought = new Map(linesOf(before.list).map(({ id, buy }) => [id, buy]));
  const same = linesOf(now).filter(({ id, buy }) => bought.get(id) === buy);
  const ids = new Set([...same.map(({ id }) => id), ...before.own.map(ownLine)]);
  return before.ticked.filter((id) => ids.has(id));
}

function store(kept: KeptList | null): void {
  try {
    if (kept === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(kept));
  } catch {
    // A full or forbidden store costs only the list at the next visit.
  }
}

type LastTick = DeviceList["lastTick"];

/** A tick that is taken back becomes what it was before. */
function tickOf(order: ListOrder, { ticked }: KeptList, last: LastTick): ListOrder {
  if (order.type !== "UndoTick" || last === null) return order;
  return { type: ticked.includes(last.line) ? "Untick" : "Tick", line: last.line };
}

function withOwn(before: KeptList, thing: string): KeptList {
  const plain = thing.replace(/\s+/g, " ").trim();
  const isNew = plain !== "" && !before.own.includes(plain);
  return isNew ? { ...before, own: [...before.own, plain] } : before;
}

/** What lies on the desk. */
class Sheet {
  readonly kept = signal<KeptList | null>(readKept());
  readonly isOpen = signal(false);
  readonly lastTick = signal<LastTick>(null);

  readonly keep = (then: KeptList | null): void => {
    this.kept.value = then;
    store(then);
  };

  readonly change = (by: (before: KeptList) => KeptList): void => {
    const before = this.kept.peek();
    if (before !== null) this.keep(by(before));
  };

  /** Another list, or none: the last tick was on the one before. */
  readonly lay = (list: KeptList | null): void => {
    this.keep(list);
    this.lastTick.value = null;
  };

  readonly obey = (order: ListOrder, at: Instant): void => {
    const last = this.lastTick.peek();
    this.change((before) => ({ ...before, ticked: tickedAfter(before.ticked, tickOf(order, before, last)) }));
    this.lastTick.value = order.type === "UndoTick" ? null : { line: order.line, at };
  };

  readonly handOver = (): readonly HandedOver[] => {
    const before = this.kept.peek();
    if (before === null || before.own.length === 0) return [];
    const { own, ticked } = before;
    const ids = own.map(ownLine);
    this.keep({ ...before, own: [], ticked: ticked.filter((id) => !ids.includes(id)) });
    return own.map((name) => ({ name, isBought: ticked.includes(ownLine(name)) }));
  };
}

/**
 * The list that this browser keeps.
 * @param newId tells one list from another
 * @param now when a line is ticked, so that "undo" takes back what was done last
 */
export function createBuyingDesk(newId: () => string, now: () => Instant): BuyingDesk {
  const sheet = new Sheet();
  const { kept, isOpen, lastTick } = sheet;
  const make = async (
    wanted: BuyingRequest,
    rest: (made: WrittenList) => Pick<KeptList, "own" | "ticked">,
  ): Promise<string | null> => {
    const asked = await ask(wanted);
    if ("sentence" in asked) return asked.sentence;
    sheet.lay({ id: newId(), ...asked, wanted, ...rest(asked.list) });
    return null;
  };
  return {
    kept,
    device: computed(() => ({ made: kept.value, isOpen: isOpen.value, lastTick: lastTick.value })),
    begin: (wanted) => make(wanted, () => ({ own: unticked(kept.peek()), ticked: [] })),
    change: (wanted) =>
      make(wanted, (made) => {
        const before = kept.peek();
        return before === null
          ? { own: [], ticked: [] }
          : { own: before.own, ticked: stillTicked(before, made) };
      }),
    obey: (orders) => orders.forEach((order) => sheet.obey(order, now())),
    write: (thing) => sheet.change((before) => withOwn(before, thing)),
    handOver: sheet.handOver,
    look: (looks) => (isOpen.value = looks),
    throwAway: () => sheet.lay(null),
  };
}

const unticked = (before: KeptList | null): readonly string[] =>
  before === null ? [] : before.own.filter((thing) => !before.ticked.includes(ownLine(thing)));
