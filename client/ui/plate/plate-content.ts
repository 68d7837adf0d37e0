import type { Call } from "../../../core/cook/calls.ts";
import { upcoming } from "../../../core/cook/next-call.ts";
import { isReady } from "../../../core/cook/ready.ts";
import { listed, sayCall, shortName } from "../../../core/cook/say-call.ts";
import type { Session, Timer } from "../../../core/cook/session.ts";
import type { RunSheet, Task } from "../../../core/plan/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { capital } from "../../../core/units/capital.ts";
import { shortAmount } from "../../../core/units/amount-words.ts";
import { formatDuration, spokenRoughly } from "../../../core/units/duration.ts";
import { between, minutes } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { formatHeat } from "../../../core/units/temperature.ts";
import type { Deed } from "../parts/deed.ts";
import { attendedWord, endedWord, startedWord } from "./deed-words.ts";

/** What the plate shows for one call. */
export interface PlateContent {
  readonly key: string;
  /** What stands before it where it is not the first. */
  readonly lead: string;
  /** How pressing it is, for the eye. */
  readonly tone: "work" | "ring" | "attend" | "rest";
  readonly dish: Dish | null;
  /** Beside the dish's name: "sweat the onion, 6-8 min". */
  readonly about: string;
  readonly sentence: string;
  readonly chips: readonly string[];
  /** How to tell that it is done. */
  readonly until: string | null;
  /** Why the cook is interrupted. */
  readonly why: string | null;
  readonly main: Deed | null;
  readonly more: readonly Deed[];
}

/** Everything a plate is made from. */
export interface Moment {
  readonly session: Session;
  readonly sheet: RunSheet;
  readonly now: Instant;
}

type CallOf<K extends Call["kind"]> = Extract<Call, { readonly kind: K }>;

const again: Deed = { label: "Say it again", intent: { type: "WhatNow" }, words: "what now" };
const bare = {
  lead: "Also",
  dish: null,
  about: "",
  chips: [],
  until: null,
  why: null,
  main: null,
  more: [],
} as const;

/** The plate for a call. */
export function plateContent(call: Call, moment: Moment): PlateContent {
  const sentence = sayCall(call, moment.session, moment.now);
  switch (call.kind) {
    case "ring":
      return ringing(call, moment);
    case "attend":
      return attending(call, moment);
    case "heat":
      return heating(call);
    case "take-off":
      return takingOff(call, moment);
    case "put-on":
    case "do":
      return working(call, moment);
    case "wait":
      return waiting(call, sentence);
    case "serve":
      return {
        ...bare,
        key: "serve",
        tone: "attend",
        about: "To the table",
        sentence,
        main: { label: "Served", intent: { type: "EndMeal" }, words: "end the meal" },
        more: [again],
      };
    case "held":
      return {
        ...bare,
        key: "held",
        tone: "rest",
        about: "On hold",
        sentence: "Everything is on hold.",
        why: "What is on the heat goes on, and its timers with it.",
        main: { label: "Go on", intent: { type: "GoOn" }, words: "go on" },
      };
    case "ended":
      return { ...bare, key: "ended", tone: "rest", about: "", sentence };
  }
}

function working(call: CallOf<"put-on" | "do">, moment: Moment): PlateContent {
  const { task } = call;
  const by = { by: "task", task: task.id } as const;
  const { title } = task.step;
  const main: Deed =
    call.kind === "do"
      ? { label: "Done", intent: { type: "Done", target: by }, words: `done: ${title}` }
      : { label: startedWord(task), intent: { type: "Started", target: by }, words: `started: ${title}` };
  return {
    ...ofTask(task),
    key: `${call.kind} ${task.id}`,
    tone: "work",
    lead: call.by === "cook" ? "Also" : capital(call.by),
    sentence: task.step.do,
    chips: task.step.uses.map(({ ingredient, amount }) => {
      const item = task.dish.ingredients.find((one) => one.id === ingredient);
      const name = item?.item ?? ingredient;
      return amount.kind === "to-taste" ? `${name} to taste` : `${shortAmount(amount)} ${name}`;
    }),
    main,
    more: [...notNow(task, moment), again],
  };
}

const ofTask = (task: Task) => ({
  lead: "Also",
  dish: task.dish,
  about: `${batchWords(task)}${formatDuration(task.step.time)}`,
  until: task.step.until,
  chips: [] as readonly string[],
  why: null,
});

const batchWords = ({ batch }: Task): string =>
  batch === null ? "" : `batch ${batch.number} of ${batch.count}, `;

/** Putting a step aside means taking up another that may start. */
function notNow(task: Task, { session, sheet, now }: Moment): readonly Deed[] {
  const other = upcoming(session, sheet).find(
    (one) => one.task.id !== task.id && isReady(session, one.task, now),
  )?.task;
  if (other === undefined) return [];
  const { title } = other.step;
  return [
    {
      label: `Not now: ${title}`,
      intent: { type: "First", target: { by: "task", task: other.id } },
      words: `${title} first`,
    },
  ];
}

function ringing(call: CallOf<"ring">, { session, now }: Moment): PlateContent {
  const { timer } = call;
  const task = session.tasks.find((one) => one.id === timer.task);
  // The doneness cue has a line of its own on the plate.
  const sentence = sayCall({ ...call, timer: { ...timer, task: null } }, session, now);
  const heard: Deed = {
    label: call.ring === "look" ? "I'll look" : "I hear it",
    intent: hearing(timer),
    words: `I hear ${timer.name}`,
  };
  const off: Deed = { label: endedWord(task), intent: doneWith(timer), words: `done with ${timer.name}` };
  const isLook = call.ring === "look" || task === undefined;
  const longer: Deed = {
    label: "+2 min",
    intent: { type: "Lengthen", timer: { by: "timer", timer: timer.id }, by: minutesMore },
    words: `two more minutes for ${timer.name}`,
  };
  return {
    key: `ring ${timer.id} ${call.ring}`,
    lead: "Also",
    tone: "ring",
    dish: task?.dish ?? session.meal.dishes.find((dish) => dish.id === timer.dish) ?? null,
    about:
      between(call.since, now) >= 20 ? `ringing for ${spokenRoughly(between(call.since, now))}` : "ringing",
    sentence,
    chips: [],
    until: task?.step.until ?? null,
    why: null,
    main: isLook ? heard : off,
    more: task === undefined ? [longer] : [isLook ? off : heard, longer],
  };
}

const minutesMore = minutes(2);

/** A touch answers the ring that it is about, and leaves the others ringing. */
const hearing = (timer: Timer): Deed["intent"] => ({
  type: "HearRing",
  timer: { by: "timer", timer: timer.id },
});

const doneWith = (timer: Timer): Deed["intent"] =>
  timer.task === null ? hearing(timer) : { type: "Done", target: { by: "task", task: timer.task } };

function attending(call: CallOf<"attend">, { session, now }: Moment): PlateContent {
  const { task, moment } = call;
  const progress = session.progress.get(task.id);
  const going =
    progress?.state === "running" ? `, going for ${spokenRoughly(between(progress.startedAt, now))}` : "";
  return {
    ...ofTask(task),
    about: task.step.title,
    until: null,
    key: `attend ${moment.key}`,
    tone: "attend",
    sentence: capital(moment.do),
    why: `Because it is time: ${task.step.title}${going}.`,
    main: {
      label: attendedWord(moment.do),
      intent: { type: "Attended", deed: null },
      words: attendedWord(moment.do).toLowerCase(),
    },
    more: [again],
  };
}

function heating(call: CallOf<"heat">): PlateContent {
  const dishes = [...new Set(call.for.map((task) => shortName(task.dish).toLowerCase()))];
  return {
    ...bare,
    key: `heat ${call.oven} ${formatHeat(call.heat)}`,
    tone: "work",
    dish: call.for[0]?.dish ?? null,
    about: capital(call.oven),
    sentence: `Set the ${call.oven} to ${formatHeat(call.heat)}.`,
    why: dishes.length === 0 ? null : `So that it is hot in time for the ${listed(dishes)}.`,
    main: {
      label: "It's set",
      intent: { type: "OvenAt", heat: call.heat },
      words: `the ${call.oven} is at ${formatHeat(call.heat)}`,
    },
    more: [again],
  };
}

function takingOff(call: CallOf<"take-off">, { now }: Moment): PlateContent {
  const { task } = call;
  return {
    ...ofTask(task),
    key: `off ${task.id}`,
    tone: "attend",
    sentence: `It has had its time: ${task.step.title}.`,
    why:
      between(call.since, now) < 60
        ? null
        : `Its time was up ${spokenRoughly(between(call.since, now))} ago.`,
    main: {
      label: endedWord(task),
      intent: { type: "Done", target: { by: "task", task: task.id } },
      words: `done: ${task.step.title}`,
    },
    more: [again],
  };
}

function waiting(call: CallOf<"wait">, sentence: string): PlateContent {
  const { next } = call;
  const early: readonly Deed[] =
    next === null
      ? []
      : [
          {
            label: `Now: ${next.step.title}`,
            intent: { type: "First", target: { by: "task", task: next.id } },
            words: `${next.step.title} first`,
          },
        ];
  return {
    ...bare,
    key: `wait ${next?.id ?? ""}`,
    tone: "rest",
    about: "Your hands are free",
    sentence,
    more: [...early, again],
  };
}
