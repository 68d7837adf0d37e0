import { buyingCaution, type WrittenLine, type WrittenList } from "../../core/shop/written-list.ts";
import { columns, wrapped, type Column } from "./columns.ts";

const width = 80;

const shape: readonly Column[] = [
  { most: 3, align: "left" },
  { most: 35, align: "left" },
  { most: 38, align: "left" },
];

/** "garlic: 9 cloves, about a head (no salt added)". */
const thing = ({ name, buy, note }: WrittenLine): string =>
  [buy === "" ? name : `${name}: ${buy}`, note === "" ? "" : `(${note})`].join(" ").trim();

/** Set in columns of one width, so that the boxes and the dishes stand below each other all the way down. */
function rows(lines: readonly WrittenLine[]): readonly string[] {
  const ruler = ["", "x".repeat(35), ""];
  return columns([ruler, ...lines.map((line) => ["[ ]", thing(line), line.shares])], shape).slice(1);
}

const told = (name: string, words: readonly string[]): readonly string[] =>
  words.length === 0 ? [] : ["", ...wrapped(`${name}: ${words.join("; ")}.`, width)];

/** The list for people, with boxes to tick; at most 80 letters wide. */
export function shopText({ title, dishes, fridge, useFirst, sections, notNeeded }: WrittenList): string {
  return [
    ...wrapped(`What to buy for ${title}`, width),
    ...wrapped(`${dishes.join("; ")}.`, width),
    ...(fridge.length === 0 ? [] : ["", ...wrapped(`Left from before: ${fridge.join(" ")}`, width)]),
    ...told("Use up first", useFirst),
    ...sections.flatMap(({ name, lines }) => ["", name.toUpperCase(), ...rows(lines)]),
    ...told("In the house, and in none of these dishes", notNeeded),
    "",
    ...wrapped(buyingCaution, width),
  ].join("\n");
}
