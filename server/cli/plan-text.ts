import { listed as inWords, shortName } from "../../core/cook/say-call.ts";
import { timesOf } from "../../core/pace/pace.ts";
import { kindWords } from "../../core/pace/say-pace.ts";
import { isLate, type LeftOut } from "../../core/plan/leave-out.ts";
import type { Task } from "../../core/plan/model.ts";
import { usesOf } from "../../core/plan/uses.ts";
import { helpers } from "../../core/plan/worker.ts";
import type { Worker } from "../../core/plan/worker.ts";
import { wayReason } from "../../core/plan/way-words.ts";
import { lullSentences } from "../../core/talk/lull-words.ts";
import { capital } from "../../core/units/capital.ts";
import { theDish } from "../../core/talk/speech.ts";
import { between, inMinutes, type Instant } from "../../core/units/quantity.ts";
import { formatHeat } from "../../core/units/temperature.ts";
import { columns, wrapped, type Column } from "./columns.ts";
import type { PlannedMeal } from "./planned-meal.ts";

/** A moment as a clock on the wall shows it. */
export interface WallClock {
  /** "18:27". */
  readonly time: (at: Instant) => string;
  /** "2026-03-01". */
  readonly day: (at: Instant) => string;
}

const width = 80;

const workers: readonly Worker[] = ["cook", ...helpers];

/** Stands before a step that dinner waits for. */
const awaited = "*";

interface Row {
  /** `awaited`, or nothing. */
  readonly mark: string;
  readonly at: Instant;
  readonly until: Instant | null;
  readonly who: string;
  readonly what: string;
  readonly place: string;
}

const titled = (task: Task): string => {
  const { dish, step, batch } = task;
  const which = batch === null ? "" : ` (batch ${batch.number} of ${batch.count})`;
  return `${shortName(dish)}: ${step.title}${which}`;
};

/** The steps, the moments that want the cook and the turns of the oven, in order of time. */
function rowsOf(planned: PlannedMeal): readonly Row[] {
  const { tasks, sheet } = planned;
  const known = new Map(tasks.map((task) => [task.id, task]));
  const turns = sheet.ovenMoves.map(({ at, heat, oven, readyAt }) => {
    const what = `Turn the ${oven} to ${formatHeat(heat)}`;
    return { mark: "", at, until: readyAt, who: "cook", what, place: oven };
  });
  const steps = sheet.entries.flatMap((entry): readonly Row[] => {
    const task = known.get(entry.task);
    if (task === undefined) return [];
    const worker = workers.find((one) => entry.lanes.includes(one)) ?? "cook";
    const uses = usesOf(entry, sheet, planned.setTo, formatHeat).filter((one) => one !== worker);
    const isOff = task.step.hands === "off";
    const step: Row = {
      mark: planned.chain.has(entry.task) ? awaited : "",
      at: entry.start,
      until: entry.end,
      who: isOff ? "itself" : worker,
      what: titled(task),
      // What the cook works on needs no place; what is left to itself stands somewhere.
      place: uses.join(", ") || (isOff ? "counter" : ""),
    };
    const moments = entry.moments.map((moment): Row => ({
      mark: "",
      at: moment.at,
      until: null,
      who: "cook",
      what: `${shortName(task.dish)}: ${moment.do.replace(/\.$/, "")}`,
      place: "",
    }));
    return [step, ...moments];
  });
  // Sorting keeps the order of what is at the same time: the oven is turned before anything else is done.
  return [...turns, ...steps].sort((a, b) => a.at - b.at);
}

/** 90, 12.5: minutes from the start, to the half. */
const figure = (minutes: number): string => String(Math.round(minutes * 2) / 2);

const counted = (minutes: number): string => `${figure(minutes)} ${minutes === 1 ? "minute" : "minutes"}`;

function opening({ meal, sheet, serveAt, beginsAt }: PlannedMeal, clock: WallClock): string {
  const length = counted(inMinutes(between(beginsAt, sheet.readyAt)));
  if (serveAt === null) return `${meal.name}: dinner is ready ${length} after you begin.`;
  const from = clock.day(beginsAt) === clock.day(serveAt) ? "" : " the day before";
  const [begin, ready] = [`begin at ${clock.time(beginsAt)}${from}`, clock.time(sheet.readyAt)];
  const asked = clock.time(serveAt);
  if (sheet.late === 0) return `${meal.name}: ${begin}; dinner is ready at ${ready}, in time for ${asked}.`;
  const late = Math.ceil(sheet.late / 60);
  return `${meal.name}: ${begin}; dinner is ready at ${ready} at the soonest, ${late} min after ${asked}.`;
}

/** So many dishes are offered at most: what more there are stands in the JSON. */
const mostOffers = 3;

/**
 * Without which dish dinner would be in time, or else sooner; nothing where it is in time or no dish would help. Which
 * of them may be spared is the cook's to say.
 */
function leaveOutWords({ leaveOut }: PlannedMeal, clock: WallClock): readonly string[] {
  const [best] = leaveOut;
  if (best === undefined) return [];
  const ones = leaveOut.filter(({ dishes }) => dishes.length === 1);
  const enough = ones.filter((one) => !isLate(one));
  const isOneEnough = enough.length > 0;
  const offers = isOneEnough ? enough.slice(0, mostOffers) : [...ones.slice(0, 1), best];
  const parts = [...new Set(offers)].map(({ dishes, readyAt }: LeftOut, at) => {
    const ready = at === 0 ? `it could be ready at ${clock.time(readyAt)}` : `at ${clock.time(readyAt)}`;
    return `without ${inWords(dishes.map(theDish))} ${ready}`;
  });
  const told = parts.join(", ");
  return [isOneEnough ? `${capital(told)}.` : `Leaving out one dish is not enough; ${told}.`];
}

/** What becomes of the plan where steps take shorter or longer, as they do. */
function outlookWords({ outlook, sheet, beginsAt }: PlannedMeal): string {
  const { onTime, readyAt } = outlook;
  const minutes = (at: Instant): number => Math.round(inMinutes(between(beginsAt, at)));
  if (onTime === null)
    return `Steps take now shorter, now longer: in eight of ten evenings it takes ${minutes(readyAt.early)} to ${minutes(readyAt.late)} minutes.`;
  const late = Math.round(inMinutes(between(sheet.readyAt, readyAt.late)));
  const slip = late > 0 ? ` In nine of ten it is ready at most ${late} min after the plan.` : "";
  return `Steps take now shorter, now longer: dinner is in time in ${Math.round(onTime * 100)} of 100 evenings.${slip}`;
}

/** What was wished for, and what stays to do then all the same. */
function lullWords({ lull }: PlannedMeal): readonly string[] {
  if (lull === null) return [];
  const stays = lullSentences(lull.work, Infinity);
  const free = stays.length === 0 ? "are free of work by hand" : "are kept free as far as it goes";
  return [`The last ${counted(inMinutes(lull.length))} ${free}.`, ...stays].flatMap((line) =>
    wrapped(line, width),
  );
}

/** Where the cook's own pace is not the recipes'. */
function paceWords({ paces }: PlannedMeal): readonly string[] {
  if (paces.length === 0) return [];
  const times = paces.map((pace) => `${kindWords[pace.kind]} ${timesOf(pace).toFixed(2).replace(/0$/, "")}`);
  return wrapped(
    `Reckoned with your own pace, as a multiple of the recipes' times: ${inWords(times)}.`,
    width,
  );
}

const shape = (time: Column): readonly Column[] => [
  { most: 1, align: "left" },
  time,
  time,
  { most: 6, align: "left" },
  { most: 33, align: "left" },
  { most: 18, align: "left" },
];

const listed = (items: readonly string[]): readonly string[] =>
  items.flatMap((item) =>
    wrapped(item, width - 4).map((line, index) => `${index === 0 ? "  - " : "    "}${line}`),
  );

/** How each step is done that could be done otherwise, and why. */
function ways({ meal }: PlannedMeal): readonly string[] {
  const told = meal.dishes.flatMap((dish) => dish.steps.flatMap((step) => wayReason(step) ?? []));
  return told.length === 0 ? [] : ["", "Chosen:", ...listed(told)];
}

function cautions({ meal }: PlannedMeal): readonly string[] {
  const told = meal.dishes.flatMap((dish) =>
    dish.cautions.map((caution) => `${shortName(dish)}: ${caution}`),
  );
  return told.length === 0 ? [] : ["", "Take care:", ...listed(told)];
}

/** Those that stand on the first page as well. */
const standing = [
  "Times are a guide: look, smell, and measure before you trust them. Never leave a hot stove alone.",
  "What you may eat is for your clinician to say: diets and allergens are not checked. Read every label.",
];

/** The run sheet for people, 80 letters wide: by the clock where a serving time was named, else in minutes. */
export function planText(planned: PlannedMeal, clock: WallClock): string {
  const { sheet, serveAt, beginsAt } = planned;
  const time = (at: Instant): string =>
    serveAt === null ? figure(inMinutes(between(beginsAt, at))) : clock.time(at);
  const rows = rowsOf(planned).map(({ mark, at, until, who, what, place }) => [
    mark,
    time(at),
    until === null ? "" : time(until),
    who,
    capital(what),
    place,
  ]);
  const head = ["", serveAt === null ? "min" : "from", "until", "who", "what", "where"];
  const last = ["", time(sheet.readyAt), "", "", "Dinner is ready", ""];
  const broken =
    sheet.broken.length === 0 ? ["It breaks no limit."] : ["What it breaks:", ...listed(sheet.broken)];
  return [
    ...wrapped(opening(planned, clock), width),
    ...leaveOutWords(planned, clock).flatMap((line) => wrapped(line, width)),
    ...wrapped(outlookWords(planned), width),
    ...lullWords(planned),
    ...paceWords(planned),
    ...ways(planned),
    "",
    ...columns([head, ...rows, last], shape({ most: 7, align: "right" })),
    "",
    ...(planned.chain.size === 0
      ? []
      : [`${awaited} Dinner waits for these: when one slips, dinner slips.`, ""]),
    ...broken,
    ...cautions(planned),
    "",
    ...standing.flatMap((line) => wrapped(line, width)),
  ].join("\n");
}
