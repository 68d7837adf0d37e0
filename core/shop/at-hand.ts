import type { HouseOrder } from "../house/orders.ts";
import { keyOfThing } from "../house/wanted.ts";
import type { ThingKey, WantedThing, WantedThings } from "../house/wanted.ts";
import type { Instant } from "../units/quantity.ts";
import type { SectionKind, WrittenLine, WrittenList, WrittenSection } from "./written-list.ts";

/** A list that was made for meals, as a device keeps it. */
export interface MadeList {
  readonly list: WrittenList;
  /** What the cook wrote on it while the house was not to be had: "kitchen paper". */
  readonly own: readonly string[];
  /** The ids of the lines that are in the bag. */
  readonly ticked: readonly string[];
}

/** What a device knows of its list; the house has what is wanted besides. */
export interface DeviceList {
  /** null: none has been made. */
  readonly made: MadeList | null;
  /** Whether somebody looks at it. */
  readonly isOpen: boolean;
  /** The last line that was ticked or had back here; null where that was taken back, or never was. */
  readonly lastTick: { readonly line: string; readonly at: Instant } | null;
}

/** Nothing was made, and nobody looks. */
export const noDeviceList: DeviceList = { made: null, isOpen: false, lastTick: null };

/** What is to happen to the list of a device. */
export type ListOrder =
  | { readonly type: "Tick" | "Untick"; readonly line: string }
  /** Takes the last tick back. */
  | { readonly type: "UndoTick" };

/** The ids of what is ticked after an order. */
export function tickedAfter(ticked: readonly string[], order: ListOrder): readonly string[] {
  if (order.type === "UndoTick") return ticked;
  const others = ticked.filter((id) => id !== order.line);
  return order.type === "Tick" ? [...others, order.line] : others;
}

/** A line of the list that can be ticked. */
export interface HandLine extends WrittenLine {
  readonly kind: SectionKind;
  /** In the shop: "fruit and vegetables". */
  readonly place: string;
  readonly isTicked: boolean;
  /** Whether the device keeps its tick; the house keeps that of what is wanted besides. */
  readonly isOwn: boolean;
  /** What the house wants by this line; null: only a meal takes it. */
  readonly wanted: WantedThing | null;
}

/** The whole list as it is shown, read out and ticked. */
export interface ListAtHand {
  readonly list: WrittenList;
  readonly lines: readonly HandLine[];
}

/** What is wanted besides the meals stands under this. */
export const alsoWanted = "also wanted";

/** The id of a line that the cook wrote while the house was not to be had. */
export const ownLine = (name: string): string => `own: ${name}`;

const wantedLine = (key: ThingKey): string => `wanted: ${key}`;

const bare = (id: string, name: string): WrittenLine => ({ id, name, buy: "", note: "", shares: "" });

const emptyList: WrittenList = {
  title: "the house",
  dishes: [],
  fridge: [],
  useFirst: [],
  sections: [],
  notNeeded: [],
};

interface Merged {
  readonly lines: readonly HandLine[];
  /** What has no line yet. */
  readonly rest: readonly WantedThing[];
}

/** What a meal takes and the house wants too is one line, as long as it is not in the bag: who wants it then wants more. */
function merged({ list, ticked }: MadeList, wanted: WantedThings): Merged {
  const taken = new Set<ThingKey>();
  const lines = list.sections.flatMap(({ kind, name, lines: of }) =>
    of.map((line): HandLine => {
      const isTicked = ticked.includes(line.id);
      const thing = kind === "buy" ? (wanted.get(keyOfThing(line.name)) ?? null) : null;
      const isOne = thing !== null && (thing.boughtAt !== null || !isTicked);
      if (isOne) taken.add(thing.key);
      return { ...line, kind, place: name, isTicked, isOwn: true, wanted: isOne ? thing : null };
    }),
  );
  return { lines, rest: [...wanted.values()].filter(({ key }) => !taken.has(key)) };
}

/** The list of a device: what was made for meals, by place, and what is wanted besides; null where there is neither. */
export function listAtHand(made: MadeList | null, wanted: WantedThings): ListAtHand | null {
  if (made === null && wanted.size === 0) return null;
  const { list, own, ticked } = made ?? { list: emptyList, own: [], ticked: [] };
  const { lines, rest } = merged({ list, own, ticked }, wanted);
  const besides: readonly HandLine[] = [
    ...rest.map((thing): HandLine => ({
      ...bare(wantedLine(thing.key), thing.name),
      ...alsoIn,
      isTicked: thing.boughtAt !== null,
      isOwn: false,
      wanted: thing,
    })),
    ...own.map((name): HandLine => {
      const id = ownLine(name);
      return { ...bare(id, name), ...alsoIn, isTicked: ticked.includes(id), isOwn: true, wanted: null };
    }),
  ];
  const more: readonly WrittenSection[] =
    besides.length === 0 ? [] : [{ kind: "buy", name: alsoWanted, lines: besides }];
  const places = list.sections.filter(({ kind }) => kind === "buy");
  const sections = [...places, ...more, ...list.sections.slice(places.length)];
  const canBeTicked = ({ kind }: HandLine): boolean => kind !== "enough";
  const isPlace = ({ kind }: HandLine): boolean => kind === "buy";
  const all = [...lines.filter(isPlace), ...besides, ...lines.filter((line) => !isPlace(line))];
  return { list: { ...list, sections }, lines: all.filter(canBeTicked) };
}

const alsoIn = { kind: "buy", place: alsoWanted } as const;

/** What is still to be bought. What the dishes may do without does not count. */
export const leftToBuy = ({ lines }: ListAtHand): readonly HandLine[] =>
  lines.filter(({ kind, isTicked }) => kind === "buy" && !isTicked);

/** What ticking a line, or having it back, comes to. */
export interface Ticking {
  readonly list: readonly ListOrder[];
  readonly house: readonly HouseOrder[];
}

/** Puts a line into the bag: here, and where the house wants it, in the house. */
export const ticking = ({ id, isOwn, wanted }: HandLine): Ticking => ({
  list: isOwn ? [{ type: "Tick", line: id }] : [],
  house: wanted?.boughtAt === null ? [{ type: "BuyThing", name: wanted.name }] : [],
});

/** Has a line back on the list. */
export const unticking = ({ id, isOwn, wanted }: HandLine): Ticking => ({
  list: isOwn ? [{ type: "Untick", line: id }] : [],
  house: wanted === null || wanted.boughtAt === null ? [] : [{ type: "UnbuyThing", name: wanted.name }],
});
