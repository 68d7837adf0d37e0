import { readIngredientLine } from "../food/ingredient-line.ts";
import type { Amount } from "../units/amount.ts";
import { err, ok, type Result } from "../units/result.ts";

/** What is in the house. */
export interface InHouse {
  /** In the cook's words: "half a head of garlic". */
  readonly said: string;
  readonly item: string;
  readonly preparation: string | null;
  /** "To taste": there is some, and nobody has said how much. */
  readonly amount: Amount;
  /** What is left over from a meal before is used up first. */
  readonly from: "house" | "leftover";
}

const SOME = /^(?:some|enough|plenty of|a (?:little|bit of|lot of|few)|lots of)\s+/i;

/**
 * Reads one thing that is in the house: "3 onions", "half a head of garlic", "2 cans chickpeas (400 g)"; "oil" alone
 * means that there is some.
 * Error: one sentence.
 */
export function readInHouse(written: string): Result<InHouse, string> {
  const said = written.trim().replace(/\s+/g, " ");
  const line = readIngredientLine(said);
  const isCounted = /\d|[¼-¾⅐-⅞]/.test(said);
  const some = line.ok || isCounted ? line : readIngredientLine(`${said.replace(SOME, "")}, to taste`);
  if (!some.ok) return some;
  const { item, preparation, amount } = some.value;
  if (item === null) return err(`"${said}" names no food; write one behind the amount, like 3 onions.`);
  if (/^\d/.test(preparation ?? ""))
    return err(`"${said}" tells of two things; write each on a line of its own.`);
  return ok({ said, item, preparation, amount, from: "house" });
}

/** What a list of the house holds, and what is wrong in it. */
export interface HouseRead {
  readonly house: readonly InHouse[];
  readonly mistakes: readonly { readonly line: number; readonly sentence: string }[];
}

/** Reads a list of what is in the house, a line for each thing; empty lines and those behind a # say nothing. */
export function readHouse(text: string): HouseRead {
  const lines = text
    .split(/\r?\n/)
    .map((written, index) => ({ written: written.trim(), line: index + 1 }))
    .filter(({ written }) => written !== "" && !written.startsWith("#"))
    .map(({ written, line }) => ({ line, read: readInHouse(written) }));
  return {
    house: lines.flatMap(({ read }) => (read.ok ? [read.value] : [])),
    mistakes: lines.flatMap(({ line, read }) => (read.ok ? [] : [{ line, sentence: read.error }])),
  };
}
