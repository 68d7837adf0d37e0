import { parseDuration } from "../units/duration.ts";
import type { Span } from "../units/duration.ts";
import { days, hours, seconds } from "../units/quantity.ts";
import type { Seconds } from "../units/quantity.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import { compareHeat, parseHeat } from "../units/temperature.ts";
import type { Heat } from "../units/temperature.ts";
import type { Attention, HeatRange, Link } from "./model.ts";

/** Longer than any step of a dish: what is meant is a made-ahead dish of its own. */
const LONGEST_STEP = days(3);
const LONGEST_AHEAD = days(90);
/** Home ovens end at about 550 F or 300 C. Common practice, no source. */
const HOTTEST_OVEN: Heat = { degrees: 575, scale: "F" };
/** Below this an oven is a cupboard; dough is left to rise at about 80 F. Common practice, no source. */
const COOLEST_OVEN: Heat = { degrees: 75, scale: "F" };

const BACKWARDS = /^\s*(\d+(?:\.\d+)?)\s*(?:-|–|to)\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/i;

/** A length of time from above nought to three days: "12 min", "10-15 min", "1 h 20 min". */
export function readSpan(text: string): Result<Span, string> {
  const pair = BACKWARDS.exec(text);
  if (pair !== null && Number(pair[1]) > Number(pair[2])) {
    return err(`"${text}" runs backwards; write the shorter time first.`);
  }
  const span = parseDuration(text);
  if (!span.ok) return span;
  if (/^\s*[-−]/.test(text) || span.value.low <= 0) {
    return err(`"${text}" is no time at all; write how long it takes, like 30 s or 5 min.`);
  }
  if (span.value.high > LONGEST_STEP) {
    return err(`"${text}" is longer than three days; check the figure and its unit.`);
  }
  return span;
}

/** A single length, no range, `least` seconds or more. */
function readLength(text: string, least: Seconds, most: Seconds): Result<Seconds, string> {
  const span = parseDuration(text);
  if (!span.ok) return span;
  if (span.value.low !== span.value.high)
    return err(`"${text}" is a range; write one figure here, like 5 min.`);
  if (/^\s*[-−]/.test(text) || span.value.low < least) {
    return err(`"${text}" is no time at all; write a length like 5 min.`);
  }
  if (span.value.high > most) return err(`"${text}" is too long to be meant; check the figure and its unit.`);
  return ok(span.value.low);
}

/** "20 min": how long hot food may wait, and the like. */
export const readWait = (text: string): Result<Seconds, string> => readLength(text, seconds(1), LONGEST_STEP);

/** "2 days": how long before serving a thing may be made. */
export const readAhead = (text: string): Result<Seconds, string> =>
  readLength(text, seconds(1), LONGEST_AHEAD);

/** "at most 10 min": how long before serving a step must end at the earliest. */
export function readServeWithin(text: string): Result<Seconds, string> {
  const match = /^at most (.+)$/i.exec(text.trim());
  return readLength(match?.[1] ?? text, seconds(1), hours(24));
}

/** "2-3 min, at most 5 min": how much more at a time, and in all. The ceiling is the longer end when left out. */
export function readExtend(text: string): Result<{ readonly by: Span; readonly atMost: Seconds }, string> {
  const match = /^(.+?)(?:,\s*at most (.+))?$/i.exec(text.trim());
  const by = readSpan(match?.[1] ?? text);
  if (!by.ok) return by;
  const atMost = match?.[2] === undefined ? ok(by.value.high) : readWait(match[2]);
  if (!atMost.ok) return atMost;
  if (atMost.value < by.value.high) {
    return err(`"${text}" allows less in all than at one time; write the larger figure behind "at most".`);
  }
  return ok({ by: by.value, atMost: atMost.value });
}

/** The lag between two steps: "at least 30 min", "at most 10 min", both joined by "and", "at once", "any time". */
export function readLag(text: string): Result<Omit<Link, "step">, string> {
  const written = text.trim();
  if (/^at once$/i.test(written)) return ok({ atLeast: seconds(0), atMost: seconds(0) });
  if (/^any time$/i.test(written)) return ok({ atLeast: seconds(0), atMost: null });
  const match = /^(?:at least (.+?))?(?:^|,\s*|\s+and\s+|$)(?:at most (.+))?$/i.exec(written);
  if (match === null || (match[1] === undefined && match[2] === undefined)) {
    return err(`"${text}" is not a lag; write at least 30 min, at most 10 min, at once or any time.`);
  }
  const atLeast = match[1] === undefined ? ok(seconds(0)) : readWait(match[1]);
  if (!atLeast.ok) return atLeast;
  const atMost = match[2] === undefined ? ok(null) : readWait(match[2]);
  if (!atMost.ok) return atMost;
  if (atMost.value !== null && atMost.value < atLeast.value) {
    return err(
      `"${text}" can never be kept: the longest wait is shorter than the shortest; change one of them.`,
    );
  }
  return ok({ atLeast: atLeast.value, atMost: atMost.value });
}

const MOMENT =
  /^(?:every (?<every>.+?)|after (?<after>.+?)|(?<before>.+?) before the end)(?:,\s*within (?<within>.+))?$/i;
/** How far an attention moment may slip when the recipe does not say. */
const USUAL_SLIP = "1 min";

/** "every 5 min", "after 20 min", "10 min before the end", each perhaps with ", within 2 min"; `what` is said. */
export function readMoment(text: string, what: string): Result<Attention, string> {
  const { every, after, before, within: slip = USUAL_SLIP } = MOMENT.exec(text.trim())?.groups ?? {};
  const written = every ?? after ?? before;
  if (written === undefined) {
    return err(`"${text}" is not a moment; write every 5 min, after 20 min or 10 min before the end.`);
  }
  const length = readWait(written);
  if (!length.ok) return length;
  const within = readWait(slip);
  if (!within.ok) return within;
  const said = { within: within.value, do: what };
  if (after !== undefined) return ok({ kind: "at", after: length.value, ...said });
  if (before !== undefined) return ok({ kind: "before-end", before: length.value, ...said });
  if (within.value >= length.value) {
    return err(`"${text}" may slip by its whole interval; write a shorter time behind "within".`);
  }
  return ok({ kind: "every", every: length.value, ...said });
}

const HEAT = /^(\d+)(?:\s*°?\s*[FC]?\s*(?:-|–|to)\s*(\d+))?\s*°?\s*([FC])$/i;

/** A heat or a range of heats with its scale: "365 F", "350-385 F", "180-190 C". */
export function readHeatRange(text: string): Result<HeatRange, string> {
  const match = HEAT.exec(text.trim());
  if (match?.[1] === undefined)
    return err(`"${text}" is not an oven heat; write it like 365 F or 350-385 F.`);
  const scale = match[3]?.toUpperCase() ?? "F";
  const low = parseHeat(`${match[1]} ${scale}`);
  if (!low.ok) return low;
  const high = parseHeat(`${match[2] ?? match[1]} ${scale}`);
  if (!high.ok) return high;
  if (compareHeat(low.value, high.value) > 0) {
    return err(`"${text}" is upside down; write the lower heat first.`);
  }
  if (compareHeat(high.value, HOTTEST_OVEN) > 0) {
    return err(`"${text}" is hotter than any kitchen oven; check the figure and its scale.`);
  }
  if (compareHeat(low.value, COOLEST_OVEN) < 0) {
    return err(`"${text}" is colder than an oven can hold; check the figure and its scale.`);
  }
  return ok({ low: low.value, high: high.value });
}

/** "350-385 F", or with the racks it fills: "350-385 F on 2 racks" (a comma would end the value within braces). */
export function readOven(text: string): Result<{ readonly heat: HeatRange; readonly racks: number }, string> {
  const match = /^(.+?)(?:,? on (\d+) racks?)?$/i.exec(text.trim());
  const heat = readHeatRange(match?.[1] ?? text);
  if (!heat.ok) return heat;
  const racks = Number(match?.[2] ?? "1");
  if (racks < 1 || racks > 6) return err(`"${text}" asks for ${racks} racks; write a number from 1 to 6.`);
  return ok({ heat: heat.value, racks });
}

/** "8 patties, 3 at a time". */
export function readBatch(
  text: string,
): Result<{ readonly of: number; readonly holds: number; readonly pieces: string }, string> {
  const match = /^(\d{1,4}) ([^,]+), (\d{1,4}) at a time$/i.exec(text.trim());
  if (match?.[2] === undefined) return err(`"${text}" is not a batch; write it like 8 patties, 3 at a time.`);
  const [of, holds] = [Number(match[1]), Number(match[3])];
  if (of < 1 || holds < 1) return err(`"${text}" has nothing in it; write numbers from 1 on.`);
  return ok({ of, holds, pieces: match[2].trim() });
}

/** "4 bowls": how many servings a dish gives, and of what. */
export function readYield(text: string): Result<{ readonly servings: number; readonly of: string }, string> {
  const match = /^(\d{1,3})(?: (.+))?$/.exec(text.trim());
  const servings = Number(match?.[1] ?? "0");
  if (servings < 1 || servings > 100) {
    return err(
      `"${text}" is not a yield; write how many servings, from 1 to 100, and of what, like 4 bowls.`,
    );
  }
  return ok({ servings, of: match?.[2] ?? "servings" });
}

/** "18:30" as minutes from midnight. */
export function readClock(text: string): Result<number, string> {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text.trim());
  if (match === null) return err(`"${text}" is not a time of day; write it like 18:30.`);
  return ok(Number(match[1]) * 60 + Number(match[2]));
}

/** "20 F a minute": how fast an oven heats or cools, in Fahrenheit degrees a minute. */
export function readHeatingRate(text: string): Result<number, string> {
  const match = /^(\d+(?:\.\d+)?)\s*°?\s*([FC]) a minute$/i.exec(text.trim());
  const perMinute = Number(match?.[1] ?? "0") * (match?.[2]?.toUpperCase() === "C" ? 1.8 : 1);
  if (perMinute <= 0 || perMinute > 200) {
    return err(`"${text}" is not how fast an oven changes; write it like 20 F a minute.`);
  }
  return ok(perMinute);
}
