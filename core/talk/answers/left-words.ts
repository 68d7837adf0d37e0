import type { Leftover } from "../../house/leftover.ts";
import { servingsWords } from "../../house/servings-words.ts";
import { sources } from "../../keeping/sources-table.ts";
import type { SourceId } from "../../keeping/sources-table.ts";
import type { Instant } from "../../units/quantity.ts";
import { daysAgo, type Wall, weekdayOf } from "../../house/day-words.ts";
import { clockAt } from "../speech.ts";

/** The name that is handiest to say, in mid-sentence: "soup". */
export const shortLeft = (name: string, says: readonly string[]): string =>
  (says.find((said) => said.toLowerCase() !== name.toLowerCase()) ?? name).toLowerCase();

/** The same, and that it was heated: "heated soup". */
export const leftName = ({ name, heatedAt }: Leftover): string =>
  `${heatedAt === null ? "" : "heated "}${shortLeft(name, [])}`;

/** When it was, in mid-sentence: "at six twelve", "yesterday at six twelve", "on Friday". */
export function whenHeated(at: Instant, wall: Wall): string {
  const days = daysAgo(at, wall);
  if (days > 1) return `on ${weekdayOf(at, wall)}`;
  return `${days === 1 ? "yesterday " : ""}at ${clockAt(at, wall)}`;
}

/** "two bowls", or the cook's own words. */
export const amountIn = ({ rest, servingsOf }: Leftover): string =>
  rest.kind === "words" ? rest.words : servingsWords(rest.servings, servingsOf);

const spokenSources: Partial<Record<SourceId, string>> = {
  leftovers: "the USDA",
  rice: "Britain's food agency",
};

/** Who says so, short enough to be said: "the USDA". */
export const saidBy = (source: SourceId): string => spokenSources[source] ?? sources[source].name;
