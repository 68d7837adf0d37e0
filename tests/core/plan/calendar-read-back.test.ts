import fc from "fast-check";
import { convertIcsCalendar } from "ts-ics";
import { describe, expect, it } from "vitest";
import { bigMoments } from "../../../core/plan/big-moments.ts";
import type { PlannedEvening } from "../../../core/plan/big-moments.ts";
import { calendarOf, calendarMaker } from "../../../core/plan/calendar.ts";
import { minus } from "../../../core/units/quantity.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { bakedSupper, evening, mark } from "./calendar-evening.ts";

/**
 * Read by a parser that knows nothing of us (ts-ics, which leaves the words of an alarm escaped: they are not compared).
 * The expected side comes from the moments, never from our text.
 */
function readBack(planned: PlannedEvening) {
  const read = convertIcsCalendar(undefined, calendarOf(planned, mark));
  const events = read.events ?? [];
  return {
    maker: read.prodId,
    method: read.method ?? null,
    events: events.map(({ summary, description, start, end, stamp, alarms }) => ({
      title: summary,
      about: description ?? "",
      from: start.date.getTime(),
      to: end?.date.getTime() ?? null,
      stamp: stamp.date.getTime(),
      alarms: alarms?.map(({ action }) => action) ?? [],
    })),
  };
}

const whole = (epochMs: number): number => Math.floor(epochMs / 1000) * 1000;

function expected(planned: PlannedEvening) {
  return {
    maker: calendarMaker,
    method: null,
    events: bigMoments(planned).map((moment) => ({
      title: moment.title,
      about: moment.about.join("\n"),
      from: whole(moment.from),
      to: whole(moment.to),
      stamp: whole(mark.stamp),
      alarms: minus(moment.from, moment.remind) < mark.stamp ? [] : ["DISPLAY"],
    })),
  };
}

describe("a calendar file read by another program", () => {
  it("[P58] it reads the same moments, times, words and reminders", () => {
    expect(readBack(evening)).toEqual(expected(evening));
  });

  it("[P58] whatever a dish is called and whatever its step says", () => {
    const words = fc
      .stringMatching(/^[a-zéß€🥕\\;,:"'°=-]([ a-zA-Z0-9éß€🥕\\;,:"'°=\-()]{0,120}[a-zé🥕;,\\])?$/u)
      .filter((text) => text.trim() === text && text !== "");
    fc.assert(
      fc.property(words, words, words, (name, title, does) => {
        const dishes = bakedSupper.dishes.map((dish) => ({
          ...dish,
          name,
          steps: dish.steps.map((step) => ({ ...step, title, do: does })),
        }));
        const meal = { ...bakedSupper, name, dishes };
        const planned = { ...evening, meal, tasks: expandTasks(meal) };
        expect(readBack(planned)).toEqual(expected(planned));
      }),
      { numRuns: 200, seed: 5545 },
    );
  });
});
