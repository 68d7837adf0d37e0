import * as z from "zod/mini";
import { instant, seconds } from "../units/quantity.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import { cookingMealSchema, measuredSchema } from "../recipe/cooking-meal-schema.ts";
import { MOST_SERVINGS } from "../recipe/scale.ts";
import { dishId, ingredientId, stepId } from "../recipe/model.ts";
import { noteAnswers } from "../next-time/note.ts";
import { noteSchema } from "../next-time/note-schema.ts";
import { paceWishes, workKinds } from "../pace/pace.ts";
import { helpers } from "../plan/worker.ts";
import { leastLull, mostLull } from "../plan/lull.ts";
import { taskId } from "../plan/model.ts";
import type { LaidStep, MealEvent } from "./events.ts";
import type { Order } from "./orders.ts";
import { portionOf } from "../mise/portion.ts";
import { timerId } from "./orders.ts";

const text = z.string().check(z.minLength(1), z.maxLength(200));
const task = z.pipe(text, z.transform(taskId));
const timer = z.pipe(text, z.transform(timerId));
const dish = z.pipe(text, z.transform(dishId));
const count = z.int().check(z.nonnegative());
const moment = z.pipe(count, z.transform(instant));
const length = z.pipe(z.number().check(z.nonnegative()), z.transform(seconds));
const span = z.strictObject({ low: length, high: length });
const heat = z.strictObject({ degrees: z.number(), scale: z.enum(["F", "C"]) });
const swap = {
  dish,
  ingredient: z.pipe(text, z.transform(ingredientId)),
  swap: count,
};

const wish = { kind: z.enum(workKinds), wish: z.nullable(z.enum(paceWishes)) };
const pace = z.strictObject({
  ...wish,
  times: z.number().check(z.positive()),
  steps: count,
  evenings: count,
  of: z.array(text),
});
const helper = z.enum(helpers);
const way = { dish, step: z.pipe(text, z.transform(stepId)), way: text };

const portions = z.array(z.pipe(z.string().check(z.maxLength(610)), z.transform(portionOf)));
const amountWanted = {
  dish,
  ingredient: z.pipe(text, z.transform(ingredientId)),
  step: z.nullable(z.pipe(text, z.transform(stepId))),
  amount: measuredSchema,
};
const noteAnswered = { key: z.string().check(z.maxLength(410)), answer: z.enum(noteAnswers) };
const lull = { length: z.nullable(length.check(z.minimum(leastLull), z.maximum(mostLull))) };
const baking = z.strictObject({ oven: text, heat: z.number() });
const course = z.array(z.strictObject({ task, start: count, baking: z.nullable(baking) }));

const bare = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type) });
const ofTask = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), task });
const ofTimer = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), timer });
const byTimer = <Name extends string>(type: Name) =>
  z.strictObject({ type: z.literal(type), timer, by: length });
const ofHelper = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), helper });
const beginning = { meal: cookingMealSchema, serveAt: z.nullable(moment) };

const servings = { dish, servings: z.int().check(z.positive(), z.maximum(MOST_SERVINGS)) };

const order: z.ZodMiniType<Order> = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("BeginMeal"), ...beginning }),
  bare("Tick"),
  ofTask("StartTask"),
  ofTask("FinishTask"),
  ofTask("SkipTask"),
  ofTask("ReopenTask"),
  ofTask("ChooseTask"),
  z.strictObject({ type: z.literal("GiveAttention"), task, moment: text }),
  z.strictObject({ type: z.literal("SetOven"), oven: text, heat: z.nullable(heat) }),
  bare("HoldEverything"),
  bare("GoOn"),
  z.strictObject({ type: z.literal("SetServing"), serveAt: z.nullable(moment) }),
  z.strictObject({ type: z.literal("SetLull"), ...lull }),
  z.strictObject({ type: z.literal("UseSwap"), ...swap }),
  z.strictObject({ type: z.literal("SetPace"), ...wish }),
  bare("ForgetPace"),
  z.strictObject({ type: z.literal("LeaveOutDish"), dish }),
  z.strictObject({ type: z.literal("TakeWay"), ...way }),
  z.strictObject({ type: z.literal("ChangeServings"), ...servings }),
  ofHelper("WelcomeHelper"),
  ofHelper("ReleaseHelper"),
  z.strictObject({ type: z.literal("HandTask"), task, helper }),
  z.strictObject({
    type: z.literal("StartTimer"),
    timer,
    name: z.nullable(text),
    span,
    dish: z.nullable(dish),
  }),
  byTimer("LengthenTimer"),
  byTimer("ShortenTimer"),
  ofTimer("PauseTimer"),
  ofTimer("ResumeTimer"),
  ofTimer("RestartTimer"),
  ofTimer("StopTimer"),
  ofTimer("CancelTimer"),
  bare("CancelAllTimers"),
  z.strictObject({ type: z.literal("RenameTimer"), timer, name: z.string().check(z.maxLength(200)) }),
  ofTimer("AnswerRing"),
  bare("UndoLast"),
  bare("EndMeal"),
  z.strictObject({ type: z.literal("FinishPreparing"), portions }),
  z.strictObject({ type: z.literal("ReopenPreparing"), portions }),
  z.strictObject({ type: z.literal("ChangeAmount"), ...amountWanted }),
  z.strictObject({ type: z.literal("NoteNextTime"), note: noteSchema }),
  z.strictObject({ type: z.literal("AnswerNote"), ...noteAnswered }),
]);

const happening = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("MealBegun"), ...beginning }),
  ofTask("TaskCalled"),
  ofTask("TaskStarted"),
  ofTask("TaskFinished"),
  ofTask("TaskSkipped"),
  ofTask("TaskReopened"),
  ofTask("TaskChosen"),
  ofTask("TaskSetAside"),
  z.strictObject({ type: z.literal("AttentionGiven"), task, moment: text }),
  z.strictObject({ type: z.literal("OvenSet"), oven: text, heat: z.nullable(heat) }),
  bare("EverythingHeld"),
  bare("WentOn"),
  z.strictObject({ type: z.literal("ServingSet"), serveAt: z.nullable(moment) }),
  z.strictObject({ type: z.literal("LullKept"), ...lull }),
  z.strictObject({ type: z.literal("LullSet"), ...lull }),
  z.strictObject({ type: z.literal("SwapUsed"), ...swap }),
  z.strictObject({ type: z.literal("PaceKnown"), paces: z.array(pace) }),
  z.strictObject({ type: z.literal("PaceSet"), ...wish }),
  bare("PaceForgotten"),
  z.strictObject({ type: z.literal("WayTaken"), ...way }),
  z.strictObject({ type: z.literal("ServingsChanged"), ...servings }),
  ofHelper("HelperCame"),
  ofHelper("HelperLeft"),
  z.strictObject({ type: z.literal("TaskHanded"), task, helper }),
  z.strictObject({ type: z.literal("CourseLaid"), course }),
  z.strictObject({
    type: z.literal("TimerStarted"),
    timer,
    name: text,
    task: z.nullable(task),
    dish: z.nullable(dish),
    span,
    ceiling: z.nullable(length),
    chime: count,
  }),
  byTimer("TimerLengthened"),
  byTimer("TimerShortened"),
  ofTimer("TimerPaused"),
  ofTimer("TimerResumed"),
  ofTimer("TimerRestarted"),
  ofTimer("TimerStopped"),
  ofTimer("TimerCancelled"),
  z.strictObject({ type: z.literal("TimerRenamed"), timer, name: text }),
  z.strictObject({ type: z.literal("RingAnswered"), timer, ring: z.enum(["look", "end"]) }),
  z.strictObject({ type: z.literal("Undone"), undoes: text }),
  bare("MealEnded"),
  z.strictObject({ type: z.literal("PreparingFinished"), portions }),
  z.strictObject({ type: z.literal("PreparingReopened"), portions }),
  z.strictObject({ type: z.literal("AmountChanged"), ...amountWanted }),
  z.strictObject({ type: z.literal("NextTimeNoted"), note: noteSchema }),
  z.strictObject({ type: z.literal("NotesOffered"), notes: z.array(noteSchema) }),
  z.strictObject({ type: z.literal("NoteAnswered"), ...noteAnswered }),
]);

const mealEvent: z.ZodMiniType<MealEvent> = z.strictObject({
  seq: z.int().check(z.positive()),
  at: moment,
  command: text,
  happening,
});

/** An order from a socket or a script. Error: one sentence naming the field. */
export const parseOrder = (value: unknown): Result<Order, string> => read(order, value, "order");

/** An event from disk or a socket. Error: one sentence naming the field. */
export const parseEvent = (value: unknown): Result<MealEvent, string> => read(mealEvent, value, "event");

/** What a search for a course has come to; null: nothing better. Error: one sentence naming the field. */
export const parseCourse = (value: unknown): Result<readonly LaidStep[] | null, string> =>
  read(z.nullable(course), value, "course");

function read<T>(schema: z.ZodMiniType<T>, value: unknown, what: string): Result<T, string> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? "" : ` at ${issue.path.join(".")}`;
  return err(`That ${what} makes no sense${where}: ${issue?.message ?? "it has another shape"}.`);
}
