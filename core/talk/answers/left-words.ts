import type { Leftover } from "../../house/leftover.ts";
import { servingsWords } from "../../house/servings-words.ts";
import { sources } from "../../keeping/sources-table.ts";
import type { SourceId } from "../../keeping/sources-table.ts";
import { numberWords } from "../../units/number-words.ts";
import type { Instant } from "../../units/quantity.ts";
import type { Kitchen } from "../model.ts";

/** The name that is handiest to say, in mid-sentence: "soup". */
export const shortLeft = (name: string, says: readonly string[]): string =>
  (says.find((said) => said.toLowerCase() !== name.toLowerCase()) ?? name).toLowerCase();

/** "two bowls", or the cook's own words. */
export const amountIn = ({ rest, servingsOf }: Leftover): string =>
  rest.kind === "words" ? rest.words : servingsWords(rest.servings, servingsOf);

const dayMs = 86_400_000;
const weekdays = ["Thursday", "Friday", "Saturday", "Sunday", "Monday", "Tuesday", "Wednesday"] as const;

type Wall = Pick<Kitchen, "now" | "utcOffsetMinutes">;

/** Which day by the kitchen's calendar, counted from 1970-01-01, which was a Thursday. */
const dayOf = (at: Instant, { utcOffsetMinutes }: Wall): number =>
  Math.floor((at + utcOffsetMinutes(at) * 60_000) / dayMs);

/** Until when as it is said: "today", "by tomorrow", "by Friday", "within ninety days". */
export function byDay(useBy: Instant, wall: Wall): string {
  const day = dayOf(useBy, wall);
  const away = day - dayOf(wall.now, wall);
  if (useBy < wall.now) return "no more";
  if (away === 0) return "today";
  if (away === 1) return "by tomorrow";
  return away < 7 ? `by ${weekdays[day % 7] ?? ""}` : `within ${numberWords(away)} days`;
}

const spokenSources: Partial<Record<SourceId, string>> = {
  leftovers: "the USDA",
  rice: "Britain's food agency",
};

/** Who says so, short enough to be said: "the USDA". */
export const saidBy = (source: SourceId): string => spokenSources[source] ?? sources[source].name;
