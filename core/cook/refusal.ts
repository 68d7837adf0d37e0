import type { Helper } from "../plan/worker.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { spokenDuration } from "../units/duration.ts";
import { capital } from "../units/capital.ts";

type Asked = { readonly asked: string };
type Named = { readonly name: string };
type Titled = { readonly title: string };
type OfWay = Titled & { readonly way: string };
type OfHelper = { readonly helper: Helper };

/** What each reason tells besides its code. */
interface Reasons {
  readonly NoMeal: unknown;
  readonly MealUnderway: Named;
  readonly MealOver: unknown;
  readonly NoSuchTask: Asked;
  readonly AlreadyDone: Titled;
  readonly AlreadyRunning: Titled;
  readonly StillOpen: Titled;
  readonly FirstFinish: Titled & { readonly first: string };
  readonly TooSoon: Titled & { readonly wait: Seconds };
  readonly NoSuchMoment: Titled;
  readonly AlreadyHeld: unknown;
  readonly NotHeld: unknown;
  readonly ServingPast: { readonly serveAt: Instant };
  readonly NoSuchSwap: Asked;
  readonly SwapUsedBefore: { readonly use: string };
  readonly NoSuchOven: Asked;
  readonly NothingToUndo: unknown;
  readonly HelperThere: OfHelper;
  readonly NoSuchHelper: OfHelper;
  readonly NoSuchWay: Asked;
  readonly WayTakenAlready: OfWay;
  readonly BegunInAWay: OfWay;
  /** `lack` is a sentence. */
  readonly KitchenLacks: { readonly lack: string };
  readonly NoSuchLull: unknown;
  readonly LullAlready: { readonly length: Seconds | null };
  readonly NoSuchDish: Asked;
  readonly DishOver: Named;
  readonly DishBegun: Named;
  readonly OddServings: { readonly most: number };
  readonly ServingsAlready: Named & { readonly servings: number };
  readonly OnlyDish: Named;
  readonly NoSuchTimer: Asked;
  readonly TimerTooShort: unknown;
  readonly TimerTooLong: { readonly most: Seconds };
  readonly TooManyTimers: { readonly most: number };
  readonly BeyondLatest: Named & { readonly ceiling: Seconds; readonly room: Seconds };
  readonly LessThanLeft: Named & { readonly left: Seconds };
  readonly TimerNotRunning: Named;
  readonly TimerNotPaused: Named;
  readonly TimerNotRinging: Named;
  readonly EmptyName: unknown;
  readonly NoSuchFood: Asked;
  readonly NoAmount: unknown;
  readonly OddAmount: Asked & { readonly recipe: string };
  readonly AmountAlready: Asked;
  readonly NoSuchNote: unknown;
}

type Code = keyof Reasons;

/** Why an order was not carried out. Nothing has changed. */
export type Refusal<C extends Code = Code> = {
  readonly [Each in C]: { readonly code: Each } & Reasons[Each];
}[C];

const sentences: { readonly [Each in Code]: (refusal: Refusal<Each>) => string } = {
  NoMeal: () => "No meal is being cooked. Choose one on the first page.",
  MealUnderway: ({ name }) => `${name} is on the stove already. End it first: say "end the meal".`,
  MealOver: () => "This meal has ended. Choose another on the first page.",
  NoSuchTask: ({ asked }) => `There is no step called ${asked}. Say "what is left" to hear them.`,
  AlreadyDone: ({ title }) => `You have done that already: ${title}. Say "back" to do it again.`,
  AlreadyRunning: ({ title }) => `That is going already: ${title}.`,
  StillOpen: ({ title }) => `That is not done yet: ${title}.`,
  FirstFinish: ({ title, first }) => `First this: ${first}. Then ${title}.`,
  TooSoon: ({ title, wait }) => `Too soon to ${title}: it wants ${spokenDuration(wait)} more.`,
  NoSuchMoment: ({ title }) => `Nothing is to be seen to now: ${title}.`,
  AlreadyHeld: () => `Everything is on hold. Say "go on" to carry on.`,
  NotHeld: () => "Nothing is on hold; we are cooking.",
  ServingPast: () => "That time has gone by. Give me a later one.",
  NoSuchSwap: ({ asked }) => `I know nothing to use instead of ${asked}.`,
  SwapUsedBefore: ({ use }) => `You are using ${use} already.`,
  NoSuchOven: ({ asked }) => `There is no ${asked} in this kitchen.`,
  NothingToUndo: () => "There is nothing to undo.",
  HelperThere: ({ helper }) => `The ${helper} is here already.`,
  NoSuchHelper: ({ helper }) => `There is no ${helper} here. Say "someone is helping me" when there is.`,
  NoSuchWay: ({ asked }) => `The recipe names no such way: ${asked}.`,
  WayTakenAlready: ({ title, way }) => `That is the plan already: ${title} ${way}.`,
  BegunInAWay: ({ title, way }) => `Too late for another way. You have begun to ${title} ${way}.`,
  KitchenLacks: ({ lack }) => lack,
  NoSuchLull: () => "From one minute to an hour before dinner can be kept free. Say how long.",
  LullAlready: ({ length }) =>
    length === null
      ? "No time before dinner is kept free."
      : `That is the plan already: ${spokenDuration(length)} before dinner are kept free.`,
  NoSuchDish: ({ asked }) => `There is no dish called ${asked} in this meal.`,
  DishOver: ({ name }) => `Nothing is left to do for this dish: ${name}.`,
  DishBegun: ({ name }) => `Too late for another number of servings; this dish is begun: ${name}.`,
  OddServings: ({ most }) => `From one to ${most} servings can be made. Say a whole number.`,
  ServingsAlready: ({ name, servings }) => `That is the plan already: ${name} for ${servings}.`,
  OnlyDish: ({ name }) => `Without it there is nothing to eat: ${name}. Say "end the meal" to stop.`,
  NoSuchTimer: ({ asked }) => `There is no ${asked} timer. Ask "which timers are on" to hear them.`,
  TimerTooShort: () => "A timer needs at least one second. Say how long, like twelve minutes.",
  TimerTooLong: ({ most }) => `A timer runs for ${spokenDuration(most)} at most. Say a shorter time.`,
  TooManyTimers: ({ most }) => `There are ${most} timers already. Stop one first.`,
  BeyondLatest: ({ name, ceiling, room }) => {
    const limit = `The recipe allows ${spokenDuration(ceiling)} in all for this: ${name}.`;
    return room < 1 ? `${limit} Take it off now.` : `${limit} At most ${spokenDuration(room)} more.`;
  },
  LessThanLeft: ({ name, left }) =>
    `${capital(name)} has only ${spokenDuration(left)} left. Say "stop the timer" to end it.`,
  TimerNotRunning: ({ name }) => `That timer is not running: ${name}.`,
  TimerNotPaused: ({ name }) => `That timer is not paused: ${name}.`,
  TimerNotRinging: ({ name }) => `That timer is not ringing: ${name}.`,
  EmptyName: () => "A timer's name needs a word or two, sixty letters at most.",
  NoSuchFood: ({ asked }) => `There is no ${asked} in that dish.`,
  NoAmount: () => "That is no amount. Say how much, like two tablespoons.",
  OddAmount: ({ asked, recipe }) => `I cannot take that: ${asked}. So far it is ${recipe}.`,
  NoSuchNote: () => `That is settled already. Ask "what did I want to change" to hear the notes.`,
  AmountAlready: ({ asked }) => `That is the amount already: ${asked}.`,
};

/** Plain words, said aloud with wet hands: what is wrong, then what to do. */
export function sentence<C extends Code>(refusal: Refusal<C>): string {
  return sentences[refusal.code](refusal);
}
