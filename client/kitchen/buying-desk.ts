import { signal } from "@preact/signals";
import * as z from "zod/mini";
import { buyingPath } from "../../core/sync/buying-path.ts";
import type { BuyingRequest } from "../../core/sync/buying-request.ts";
import type { WrittenList } from "../../core/shop/written-list.ts";
import { parseJson, readItem } from "../storage/kept-log.ts";
import type { BuyingDesk, KeptList } from "./buying-model.ts";
import { ownLine } from "./own-line.ts";

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
    meals: z.array(z.object({ meal: z.string(), servings: z.record(z.string(), z.number()) })),
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

function withTick(before: KeptList, id: string): KeptList {
  const { ticked } = before;
  const isIn = ticked.includes(id);
  return { ...before, ticked: isIn ? ticked.filter((one) => one !== id) : [...ticked, id] };
}

function withOwn(before: KeptList, thing: string): KeptList {
  const plain = thing.replace(/\s+/g, " ").trim();
  const isNew = plain !== "" && !before.own.includes(plain);
  return isNew ? { ...before, own: [...before.own, plain] } : before;
}

/** The list that this browser keeps. @param newId tells one list from another */
export function createBuyingDesk(newId: () => string): BuyingDesk {
  const kept = signal<KeptList | null>(readKept());
  const keep = (now: KeptList | null): void => {
    kept.value = now;
    store(now);
  };
  const change = (by: (before: KeptList) => KeptList): void => {
    const before = kept.peek();
    if (before !== null) keep(by(before));
  };
  const make = async (
    wanted: BuyingRequest,
    rest: (now: WrittenList) => Pick<KeptList, "own" | "ticked">,
  ): Promise<string | null> => {
    const asked = await ask(wanted);
    if ("sentence" in asked) return asked.sentence;
    keep({ id: newId(), ...asked, wanted, ...rest(asked.list) });
    return null;
  };
  return {
    kept,
    begin: (wanted) => make(wanted, () => ({ own: unticked(kept.peek()), ticked: [] })),
    change: (wanted) =>
      make(wanted, (now) => {
        const before = kept.peek();
        return before === null
          ? { own: [], ticked: [] }
          : { own: before.own, ticked: stillTicked(before, now) };
      }),
    tick: (id) => change((before) => withTick(before, id)),
    write: (thing) => change((before) => withOwn(before, thing)),
    throwAway: () => keep(null),
  };
}

const unticked = (before: KeptList | null): readonly string[] =>
  before === null ? [] : before.own.filter((thing) => !before.ticked.includes(ownLine(thing)));
