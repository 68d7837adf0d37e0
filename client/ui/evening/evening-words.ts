import { capital } from "../../../core/units/capital.ts";
import { spokenDuration } from "../../../core/units/duration.ts";
import { inMinutes, minutes } from "../../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../../core/units/quantity.ts";
import type { Evening, LaneBar } from "./evening-layout.ts";
import type { HeatCurve, HeatTurn } from "./heat-curve.ts";

type ClockOf = (at: Instant) => string;

const stateWords = { done: "done", running: "running now", focus: "in hand", ahead: "to come" } as const;

/** Whole minutes, rounded down: nobody may be told of more time than there is. */
const wholeMinutes = (length: Seconds): number => Math.floor(inMinutes(length));

/** "may start twelve minutes later"; null where it may not. */
function saySlack({ slack, awaitedTo }: LaneBar): string | null {
  const spare = wholeMinutes(slack);
  return awaitedTo !== null || spare < 1 ? null : `may start ${spokenDuration(minutes(spare))} later`;
}

/** Whether dinner waits for it, or only for its being set going; null where it does not. */
function sayAwaited({ awaitedTo, to }: LaneBar): string | null {
  if (awaitedTo === null) return null;
  return awaitedTo < to ? "dinner waits for its beginning" : "dinner waits for it";
}

/** All that the picture tells of one step. */
export function sayBar(bar: LaneBar, clockOf: ClockOf): string {
  const more = sayAwaited(bar) ?? saySlack(bar);
  return [
    bar.title,
    stateWords[bar.state],
    bar.dish,
    `${clockOf(bar.from)} to ${clockOf(bar.to)}`,
    ...(more === null ? [] : [more]),
  ].join(", ");
}

function sayReady({ now, readyAt, serveAt }: Evening, clockOf: ClockOf): string {
  const ready = `It is ${clockOf(now)}. Dinner is ready at ${clockOf(readyAt)}`;
  if (serveAt === null) return `${ready}.`;
  return serveAt >= readyAt
    ? `${ready}, in time for ${clockOf(serveAt)}.`
    : `${ready}; you asked to eat at ${clockOf(serveAt)}.`;
}

function sayTurn({ at, text, reachedAt }: HeatTurn, clockOf: ClockOf): string {
  return text === "off" ? `off at ${clockOf(at)}` : `${text}, set ${clockOf(at)}, hot ${clockOf(reachedAt)}`;
}

/** What the picture tells, for who cannot see it, one sentence each. */
export function sayEvening(
  evening: Evening,
  heats: ReadonlyMap<string, HeatCurve>,
  clockOf: ClockOf,
): readonly string[] {
  const bars = new Map(evening.lanes.flatMap((lane) => lane.bars.map((bar) => [bar.task, bar])));
  const named = (bar: LaneBar): string => `${bar.dish}, ${bar.title}`;
  const chain = evening.chain.flatMap((task) => {
    const bar = bars.get(task);
    return bar === undefined
      ? []
      : `${named(bar)}, ${clockOf(bar.from)} to ${clockOf(bar.awaitedTo ?? bar.to)}`;
  });
  const free = [...bars.values()].flatMap((bar) => {
    const slack = saySlack(bar);
    return slack === null ? [] : `${named(bar)}, ${slack}`;
  });
  const ovens = [...heats].map(([name, { turns }]) =>
    turns.length === 0
      ? `The ${name} stays cold.`
      : `${capital(name)}: ${turns.map((turn) => sayTurn(turn, clockOf)).join("; then ")}.`,
  );
  return [
    sayReady(evening, clockOf),
    ...(chain.length === 0 ? [] : [`Dinner waits for these, one after the other: ${chain.join("; ")}.`]),
    ...(free.length === 0 ? [] : [`These can be put off: ${free.join("; ")}.`]),
    ...ovens,
  ];
}
