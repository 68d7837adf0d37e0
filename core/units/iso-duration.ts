import type { Seconds } from "./quantity.ts";
import { seconds } from "./quantity.ts";
import type { Rational } from "./rational.ts";
import { ZERO, add, mul, parseRational, ratio, toNumber } from "./rational.ts";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";

const SHAPE =
  /^P(?!$)(?:([\d.,]+)W|(?:([\d.,]+)Y)?(?:([\d.,]+)M)?(?:([\d.,]+)D)?(?:T(?=\d)(?:([\d.,]+)H)?(?:([\d.,]+)M)?(?:([\d.,]+)S)?)?)$/;

/** Seconds in a week, day, hour, minute and second, in the order the components are written. */
const SIZES = [604_800, 86_400, 3600, 60, 1];

function readComponent(text: string): Rational | null {
  if (!/^\d+(?:[.,]\d+)?$/.test(text)) return null;
  const read = parseRational(text.replace(",", "."));
  return read.ok ? read.value : null;
}

/**
 * Reads an ISO 8601 duration ("PT1H20M", "P2D", "P1W", "PT1,5H") as seconds.
 * Years and months are refused, since their length varies; only the smallest component may have decimals.
 * Errors: one sentence. Source: ISO 8601-1:2019, 5.5.2 (durations), as restated in RFC 3339 appendix A.
 */
export function parseIsoDuration(text: string): Result<Seconds, string> {
  const match = SHAPE.exec(text.trim());
  if (match === null) return err(`"${text}" is not an ISO 8601 duration; write it like PT1H20M.`);
  const [, weeks, years, months, days, hours, minutes, secs] = match;
  if (years !== undefined || months !== undefined) {
    return err(`"${text}" counts years or months, which have no fixed length; write days or hours.`);
  }
  const components = [weeks, days, hours, minutes, secs];
  const given = components.filter((component) => component !== undefined);
  if (given.slice(0, -1).some((component) => /[.,]/.test(component))) {
    return err(`"${text}" has decimals before its last figure; only the smallest unit may have them.`);
  }
  let total = ZERO;
  for (const [index, component] of components.entries()) {
    if (component === undefined) continue;
    const value = readComponent(component);
    if (value === null) return err(`"${component}" in "${text}" is not a number; write it like PT1.5H.`);
    total = add(total, mul(value, ratio(SIZES[index] ?? 1)));
  }
  return ok(seconds(toNumber(total)));
}

/**
 * The ISO 8601 form of a length, to the millisecond: "PT1H20M", "P1DT2H", "PT0.5S", "PT0S".
 * Throws when negative: the standard has no sign.
 */
export function formatIsoDuration(length: Seconds): string {
  if (!(length >= 0)) throw new Error(`ISO 8601 has no negative duration: ${String(length)} s`);
  const milliseconds = Math.round(length * 1000);
  const days = Math.floor(milliseconds / 86_400_000);
  const hours = Math.floor((milliseconds % 86_400_000) / 3_600_000);
  const minutes = Math.floor((milliseconds % 3_600_000) / 60_000);
  const rest = (milliseconds % 60_000) / 1000;
  const time = [
    hours > 0 ? `${String(hours)}H` : "",
    minutes > 0 ? `${String(minutes)}M` : "",
    rest > 0 ? `${String(rest)}S` : "",
  ].join("");
  const date = days > 0 ? `${String(days)}D` : "";
  if (time === "" && date === "") return "PT0S";
  return `P${date}${time === "" ? "" : `T${time}`}`;
}
