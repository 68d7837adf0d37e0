import { parseClock } from "../../core/units/clock-words.ts";
import { hours, instant, minutes, plus, type Instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { readMinute } from "../rehearsal/script.ts";
import type { WallClock } from "./plan-text.ts";

/** A serving time as it was typed: of today unless "tomorrow" stood before it. */
export interface WantedServing {
  readonly minute: number;
  readonly day: "today" | "tomorrow";
}

const two = (figure: number): string => String(figure).padStart(2, "0");

/** This machine's own clock and calendar. */
export const wallClock: WallClock = {
  time: (at) => {
    const date = new Date(at);
    return `${two(date.getHours())}:${two(date.getMinutes())}`;
  },
  day: (at) => {
    const date = new Date(at);
    return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  },
};

const minuteOf = (now: Instant): number => new Date(now).getHours() * 60 + new Date(now).getMinutes();

/** Reads "18:30", "6:30 pm", "half past six", "tomorrow 18:30". Error: one sentence. */
export function readServing(text: string, now: Instant): Result<WantedServing, string> {
  const [, tomorrow, clock = ""] = /^\s*(tomorrow\s+)?(.*)$/i.exec(text) ?? [];
  const day = tomorrow === undefined ? "today" : "tomorrow";
  const minute = readMinute(clock.trim());
  if (minute !== null) return ok({ minute, day });
  const said = parseClock(clock, day === "today" ? minuteOf(now) : 0);
  return said.ok
    ? ok({ minute: said.value, day })
    : err(`"${text}" is not a time of day. Write it like 18:30 after --serve.`);
}

/** Both moments at which the clock may show that time, where it is set back between them; else the one. */
function momentsOf(date: Date): readonly Instant[] {
  const first = instant(date.getTime());
  const again = [minutes(30), hours(1)].map((by) => plus(first, by));
  return [first, ...again.filter((at) => wallClock.time(at) === wallClock.time(first))];
}

/**
 * The moment of a serving time by this machine's clock; the first to come, where the clock shows it twice.
 * Error: one sentence, for a time that has gone by or that the clock skips that day.
 */
export function servingMoment({ minute, day }: WantedServing, now: Instant): Result<Instant, string> {
  const date = new Date(now);
  date.setDate(date.getDate() + (day === "today" ? 0 : 1));
  date.setHours(Math.floor(minute / 60), minute % 60, 0, 0);
  if (minuteOf(instant(date.getTime())) !== minute) {
    const typed = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
    return err(`${typed} is skipped that day: the clocks are set ahead. Name another time after --serve.`);
  }
  const moments = momentsOf(date);
  const at = moments.find((moment) => moment > now) ?? instant(date.getTime());
  if (at > now) return ok(at);
  const asked = wallClock.time(at);
  return err(
    `${asked} is past: it is ${wallClock.time(now)}. Name a later time, or write --serve "tomorrow ${asked}".`,
  );
}
