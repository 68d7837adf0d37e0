import type { Amount, Measured } from "../units/amount.ts";
import { isMetric } from "../units/kitchen-figure.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import { findUnit } from "../units/unit.ts";
import { bracketMeasure, isMeasured, isPackage, readHeadAmount } from "./line-amount.ts";
import type { HeadAmount } from "./line-amount.ts";

/** Longer than any line of a recipe; the reader takes a while over a book. */
const LONGEST_LINE = 300;

/** One ingredient as a cook wrote it on one line. */
export interface IngredientLine {
  readonly amount: Amount;
  /** The size of each package or piece; null where none is told. */
  readonly each: Measured | null;
  /** The same amount in another measure, as written. */
  readonly also: Measured | null;
  /** The food in the line's own words; null where the line tells an amount only. */
  readonly item: string | null;
  readonly preparation: string | null;
  readonly optional: boolean;
}

/** Foods that nobody counts: a bare number before them lacks its unit, or has one that is unknown. */
const UNCOUNTED =
  /(?:^|\s)(?:broth|butter|cornflour|cornstarch|cream|flour|honey|juice|milk|oil|powder|rice|salt|sauce|starch|stock|sugar|syrup|vinegar|water|wine)$/i;

const DECIMAL_COMMA = "A comma ends the amount here; write a point or a fraction, like 1.5 or 1 1/2.";
const mayBeThousand = (written: string, mark: "comma" | "point"): string =>
  `"${written}" may be a thousand or one; write it without the ${mark}, like 1000 or 1.5.`;
const TO_TASTE = /\s*\b(?:to|as per|according to)\s+taste$/i;

/** "1.000 g": in half of the world the point parts the thousands, and nobody weighs to a thousandth of a gram. */
const THOUSAND = /(?<![\d.,/])[1-9]\d{0,2}\.\d{3}(?=\s*(?:g|grams?|ml|millilit(?:er|re)s?)\b)/i;

/** "1,5 dl" is one and a half where metric measures follow; "1,000 g" may be a thousand, and "1,5 cups" a slip. */
function withPoints(text: string): Result<string, string> {
  const thousand = THOUSAND.exec(text)?.[0];
  if (thousand !== undefined) return err(mayBeThousand(thousand, "point"));
  const sentences: string[] = [];
  const read = text.replace(/(?<![\d.,/])(\d+),(\d+)/g, (written: string, ...found: unknown[]) => {
    const [whole, part, at] = found as [string, string, number];
    const behind = text.slice(at + written.length);
    const named = /^\s*(?:(?:-|–|to)\s*\d+(?:[.,]\d+)?\s*)?(\p{L}+)/u.exec(behind)?.[1] ?? "";
    const unit = findUnit(named);
    if (part.length === 3 && whole !== "0") {
      sentences.push(mayBeThousand(written, "comma"));
    } else if (unit === null || !isMetric(unit)) sentences.push(DECIMAL_COMMA);
    return `${whole}.${part}`;
  });
  const [sentence] = sentences;
  return sentence === undefined ? ok(read) : err(sentence);
}

/** "(optional)" or ", optional", wherever it stands. */
const OPTIONAL = /\s*(?:\(\s*optional\s*\)|,\s*optional\s*(?=,|$))/gi;

/** The line with one kind of space and dash, and without the mark of a list before it. */
function tidied(text: string): string {
  return text
    .normalize("NFC")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/^[•·*–-]\s+/, "")
    .replace(/(?<!\d)\s[-–—]\s|\s[-–—]\s(?!\d)/g, ", ");
}

/** The parts between commas and semicolons; those in brackets and in numbers part nothing. */
function segmentsOf(text: string): readonly string[] {
  return text
    .split(/[,;](?!\d)(?![^()]*\))/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}

/** "Juice of 2 lemons": what is wanted of the food stands before it. */
const PART_OF =
  /^((?:[\p{L}-]+ ){0,3}?(?:juice|zest|rind|peel|pulp|flesh)(?: and (?:juice|zest|rind|peel|pulp))?) (?:of|from) (.+)$/iu;

/** A line taken apart as far as its amount; `item` and `notes` still have their brackets. */
interface Split {
  readonly head: HeadAmount | null;
  readonly item: string;
  readonly notes: readonly string[];
}

/** "Sugar: 100 g", "flour, 200 g": the food first, and then an amount with nothing behind it. */
function itemFirst(segments: readonly string[], whole: string): Split | null {
  const [first = "", second, ...others] = segments;
  const within = /^([^\d:()]+?):? (\S*\d.*)$/.exec(first);
  const [item, amount, notes] =
    within === null ? [first, second, others] : [within[1] ?? "", within[2], segments.slice(1)];
  const head = amount === undefined ? ok(null) : readHeadAmount(amount, whole);
  return head.ok && head.value?.rest === "" ? { head: head.value, item, notes } : null;
}

function toTaste(segments: readonly string[]): Split | null {
  const bare = segments.map((part) =>
    part
      .replace(/\(\s*to taste\s*\)$/i, "to taste")
      .replace(TO_TASTE, "")
      .trim(),
  );
  const isSaid = bare.some((part, index) => part !== segments[index]);
  const [item = "", ...notes] = bare;
  return isSaid ? { head: null, item, notes: notes.filter((part) => part !== "") } : null;
}

function splitLine(text: string): Result<Split, string> {
  const segments = segmentsOf(text);
  const [first = "", ...notes] = segments;
  const part = PART_OF.exec(first);
  const head = readHeadAmount(part?.[2] ?? first, first);
  if (!head.ok) return head;
  if (head.value !== null) {
    const told = part?.[1] === undefined ? [] : [part[1].toLowerCase()];
    return ok({ head: head.value, item: head.value.rest, notes: [...told, ...notes] });
  }
  const split = toTaste(segments) ?? itemFirst(segments, text);
  if (split !== null) return ok(split);
  return err(`There is no amount in "${text}"; write one, like 2 cups, or "to taste".`);
}

/** What the brackets of a text said, and the text without them. */
interface Unbracketed {
  readonly text: string;
  readonly each: Measured | null;
  readonly also: Measured | null;
  readonly notes: readonly string[];
}

function unbracketed(text: string, head: HeadAmount | null): Unbracketed {
  let [each, also] = [head?.each ?? null, head?.also ?? null];
  const notes: string[] = [];
  const bare = text.replace(/\s*\(([^()]*)\)\s*/g, (_, inner: string) => {
    const measure = bracketMeasure(inner);
    if (measure === null) notes.push(inner.trim());
    else if (measure.isEach || (head !== null && isPackage(head.amount.unit))) each = measure.of;
    else also = measure.of;
    return " ";
  });
  return { text: bare.trim(), each, also, notes };
}

/** What keeps a text from being the name of a food; null where nothing does. */
function strangeIn(item: string, amount: Amount): string | null {
  const figure = /(?:\b(?:or|plus|and)\s+|\+\s*)?(?<![\p{L}\d])[^\p{L}\s]*\d(?!\d*%).*$/iu.exec(item);
  const joined = /^(?:or|and|plus|less|minus|each|à)(?!\p{L}).*|^[^\p{L}\p{M}\d'’].*/iu.exec(item);
  const odd = joined?.[0] ?? figure?.[0] ?? /\S*[^\p{L}\p{M}\d\s'’.&%/-]\S*/u.exec(item)?.[0];
  if (odd !== undefined || !/\p{L}/u.test(item))
    return `"${odd ?? item}" cannot be read; write the amount, the food, and behind a comma what is done to it.`;
  if (amount.kind === "to-taste" || amount.unit !== "piece") return null;
  const unknown = / of /i.test(item)
    ? item.split(/ of /i)[0]
    : UNCOUNTED.test(item)
      ? item.split(" ")[0]
      : "";
  if (unknown === item) return `"${item}" needs a unit before it; write one like cups, grams or cloves.`;
  if (unknown === undefined || unknown === "") return null;
  return `"${unknown}" may be a unit, but it is none I know; write one like cups, grams or cloves.`;
}

function assembled(split: Split): Result<Omit<IngredientLine, "optional">, string> {
  const inItem = unbracketed(split.item, split.head);
  const amount: Amount = split.head?.amount ?? { kind: "to-taste" };
  const strange = inItem.text === "" ? null : strangeIn(inItem.text, amount);
  if (strange !== null) return err(strange);
  const second = split.notes.find(isMeasured);
  if (second !== undefined)
    return err(`"${second}" may be a second ingredient; write it on a line of its own.`);
  const behind = split.notes.map((note) => unbracketed(note, split.head));
  const others = behind.flatMap((note) => [note.text, ...note.notes]);
  const told = [...(split.head?.notes ?? []), ...inItem.notes, ...others].filter((note) => note !== "");
  const found = [inItem, ...behind];
  return ok({
    amount,
    each: found.find(({ each }) => each !== null)?.each ?? null,
    also: found.find(({ also }) => also !== null)?.also ?? null,
    item: inItem.text === "" ? null : inItem.text,
    preparation: told.length === 0 ? null : told.join(", "),
  });
}

/** A bracket that is opened and not closed, or the other way round; null where all are paired. */
function unpaired(text: string): string | null {
  const left = text.replace(/\([^()]*\)/g, (paired) => "_".repeat(paired.length));
  const at = left.search(/[()]/);
  return at < 0 ? null : text.slice(at);
}

/**
 * Reads one ingredient as people write it: "2 x 400 g tins chickpeas, drained", "1½ cups water (360 ml), warm",
 * "juice of 2 lemons", "1,5 dl milk", "salt to taste"; or an amount alone, where the name stands elsewhere.
 * "About" and the mark of a list are left out; all else is kept or refused, and nothing is guessed.
 * Errors: one sentence with the part that could not be read.
 */
export function readIngredientLine(written: string): Result<IngredientLine, string> {
  if (written.length > LONGEST_LINE)
    return err(`The line has ${written.length} characters; shorten it to ${LONGEST_LINE}.`);
  const whole = tidied(written);
  const text = whole.replace(OPTIONAL, "").trim();
  if (text === "") return err("The line is empty; write an amount and a food, like 2 cups lentils.");
  const torn = unpaired(text);
  if (torn !== null) return err(`"${torn}" is a bracket without its other half; close it, or take it away.`);
  const pointed = withPoints(text);
  if (!pointed.ok) return pointed;
  const split = splitLine(pointed.value);
  if (!split.ok) return split;
  const line = assembled(split.value);
  return line.ok ? ok({ ...line.value, optional: text !== whole }) : line;
}
