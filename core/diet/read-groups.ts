import type { FoodTable } from "../food/food.ts";
import { normaliseFood } from "../food/names.ts";
import type { Mistake } from "../recipe/mistake.ts";
import { listedPart, type FoodGroup, type FoodGroups } from "./groups.ts";

/** What came of a list of groups; a line with a mistake is left out. */
export interface GroupsRead {
  readonly groups: FoodGroups;
  readonly mistakes: readonly Mistake[];
}

type Key = "also" | "is" | "has" | "may";
const KEYS: readonly Key[] = ["also", "is", "has", "may"];
const isKey = (text: string): text is Key => KEYS.some((key) => key === text);

/** A group while its lines are read. */
interface Paragraph {
  readonly name: string;
  readonly line: number;
  readonly lists: Readonly<Record<Key, Set<string>>>;
  open: Key | null;
}

interface Reading {
  readonly table: FoodTable;
  readonly paragraphs: Paragraph[];
  readonly mistakes: (line: number, sentence: string) => void;
}

const paragraph = (name: string, line: number): Paragraph => ({
  name,
  line,
  lists: { also: new Set(), is: new Set(), has: new Set(), may: new Set() },
  open: null,
});

/** A food is listed by its main name, however it is written here; a name of no food in the table stays as it is. */
const listedName = (table: FoodTable, written: string): string => {
  const name = normaliseFood(written);
  return normaliseFood(table.get(name)?.name ?? name);
};

function readList(text: string, group: Paragraph, line: number, { table, mistakes }: Reading): void {
  const key = group.open;
  if (key === null) return;
  for (const written of text
    .split(";")
    .map((part) => part.trim())
    .filter(Boolean)) {
    const name = key === "also" ? normaliseFood(written) : listedName(table, written);
    const other = key === "also" ? null : KEYS.slice(1).find((one) => group.lists[one].has(name));
    if (other !== undefined && other !== null)
      mistakes(line, `"${written}" stands under "${other}" of ${group.name} already; keep one.`);
    else group.lists[key].add(name);
  }
}

function readLine(text: string, line: number, reading: Reading): void {
  if (!text.startsWith(" ")) {
    reading.paragraphs.push(paragraph(text.trim(), line));
    return;
  }
  const group = reading.paragraphs.at(-1);
  if (group === undefined) {
    reading.mistakes(line, "A list needs the name of its group above it, at the start of a line.");
    return;
  }
  const [, first = "", rest = ""] = /^\s+(\S+)\s*(.*)$/.exec(text) ?? [];
  const isNew = isKey(first) && /^ {2}\S/.test(text);
  if (isNew) group.open = first;
  else if (group.open === null || /^ {2}\S/.test(text)) {
    reading.mistakes(line, `"${first}" is no list of a group; write ${KEYS.join(", ")}.`);
    return;
  }
  readList(isNew ? rest : text.trim(), group, line, reading);
}

const groupFrom = ({ name, lists }: Paragraph): FoodGroup => ({
  name,
  also: [...lists.also],
  is: lists.is,
  has: lists.has,
  may: lists.may,
});

/**
 * Reads the list of groups: paragraphs with the lists "also", "is", "has" and "may", as the file's head tells.
 * @param file the name to put on mistakes
 * @param table the foods; a name under which one of them is known stands for it
 */
export function readGroups(file: string, text: string, table: FoodTable): GroupsRead {
  const mistakes: Mistake[] = [];
  const wrong = (line: number, sentence: string): void =>
    void mistakes.push({ file, line, field: "", sentence });
  const reading: Reading = { table, paragraphs: [], mistakes: wrong };
  for (const [index, line] of text.split(/\r?\n/).entries())
    if (line.trim() !== "" && !line.startsWith("#")) readLine(line, index + 1, reading);
  const groups = new Map<string, FoodGroup>();
  for (const one of reading.paragraphs) {
    const group = groupFrom(one);
    for (const name of [normaliseFood(group.name), ...group.also]) {
      const other = groups.get(name);
      if (other === undefined) groups.set(name, group);
      else if (other !== group)
        wrong(one.line, `"${name}" is a name of ${other.name} and of ${group.name}; take it off one.`);
    }
    if (group.is.size + group.has.size === 0)
      wrong(one.line, `Nothing is of the group ${group.name}; list its foods after "is".`);
  }
  return { groups, mistakes };
}

/** The groups that name a food, each once. */
export const groupsNaming = (groups: FoodGroups, name: string): readonly FoodGroup[] =>
  [...new Set(groups.values())].filter((group) => listedPart(group, name) !== null);
