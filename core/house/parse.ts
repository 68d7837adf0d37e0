import * as z from "zod/mini";
import { hazardKinds } from "../keeping/hazards-table.ts";
import { sources } from "../keeping/sources-table.ts";
import type { SourceId } from "../keeping/sources-table.ts";
import { dishId } from "../recipe/model.ts";
import { instant } from "../units/quantity.ts";
import type { Rational } from "../units/rational.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import type { HouseEvent } from "./events.ts";
import { leftoverId, places } from "./leftover.ts";
import type { HouseOrder } from "./orders.ts";
import { mostThingLetters, thingKey } from "./wanted.ts";

const text = z.string().check(z.minLength(1), z.maxLength(200));
const dish = z.pipe(text, z.transform(dishId));
const id = z.pipe(text, z.transform(leftoverId));
const thing = z.pipe(text, z.transform(thingKey));
const thingName = z.string().check(z.minLength(1), z.maxLength(mostThingLetters));
const count = z.int().check(z.nonnegative());
const moment = z.pipe(count, z.transform(instant));
const servings = z.custom<Rational>(
  (value) => typeof value === "string" && /^\d{1,6}\/[1-9]\d{0,5}$/.test(value),
);
const rest = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("servings"), servings }),
  z.strictObject({ kind: z.literal("words"), words: text }),
]);
const place = z.enum(places);
const source = z.custom<SourceId>((value) => typeof value === "string" && Object.hasOwn(sources, value));

const keeping = z.strictObject({
  fridgeDays: z.int().check(z.positive()),
  freezerDays: z.int().check(z.positive()),
  source,
  hazards: z.array(z.enum(hazardKinds)),
  known: z.union([z.literal("all"), z.literal("none"), z.strictObject({ but: z.array(text) })]),
});
const madeDish = z.strictObject({
  dish,
  name: text,
  says: z.array(text),
  yield: z.strictObject({ servings: z.number().check(z.positive()), of: text }),
  isHot: z.boolean(),
  keeping,
  offHeatAt: z.nullable(moment),
  readyAt: z.nullable(moment),
});
const made = z.strictObject({
  session: text,
  name: text,
  dishes: z.array(madeDish).check(z.maxLength(40)),
  begunAt: moment,
  endedAt: z.nullable(moment),
});
const leftover = z.strictObject({
  id,
  name: text,
  of: z.nullable(z.strictObject({ session: text, dish })),
  servingsOf: text,
  rest,
  place,
  storedAt: moment,
  useBy: moment,
  source,
  isKnown: z.boolean(),
});

const some = z.nullable(z.strictObject({ servings, as: id }));

const bare = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type) });
const ofDish = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), dish });
const ofLeftover = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), id });
const ofName = <Name extends string>(type: Name) =>
  z.strictObject({ type: z.literal(type), name: thingName });
const ofThing = <Name extends string>(type: Name) => z.strictObject({ type: z.literal(type), thing });
const ofSession = <Name extends string>(type: Name) =>
  z.strictObject({ type: z.literal(type), session: text, dish });

const order: z.ZodMiniType<HouseOrder> = z.discriminatedUnion("type", [
  z.strictObject({
    type: z.literal("StoreLeftover"),
    id,
    dish: z.nullable(dish),
    name: text,
    rest,
    place,
  }),
  z.strictObject({ type: z.literal("EatLeftover"), id, servings: z.nullable(servings) }),
  z.strictObject({ type: z.literal("HeatLeftover"), id, some }),
  ofLeftover("ThrowAwayLeftover"),
  ofDish("FinishDish"),
  z.strictObject({ type: z.literal("BeginCooling"), dish, since: moment }),
  ofDish("EndCooling"),
  bare("SilenceReminders"),
  z.strictObject({ type: z.literal("NoteMeal"), made }),
  ofName("WantThing"),
  ofName("DropThing"),
  ofName("BuyThing"),
  ofName("UnbuyThing"),
  bare("ClearBought"),
  bare("UndoLast"),
]);

const happening = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("LeftoverStored"), leftover }),
  z.strictObject({ type: z.literal("LeftoverLessened"), id, servings }),
  z.strictObject({ type: z.literal("LeftoverHeated"), id, some }),
  ofLeftover("LeftoverEaten"),
  ofLeftover("LeftoverThrownAway"),
  z.strictObject({ type: z.literal("MealNoted"), made }),
  ofSession("DishFinished"),
  z.strictObject({ type: z.literal("CoolingBegun"), session: text, dish, name: text, since: moment }),
  ofSession("CoolingEnded"),
  z.strictObject({ type: z.literal("RemindersSilenced"), session: text }),
  z.strictObject({ type: z.literal("ThingWanted"), thing, name: thingName }),
  ofThing("ThingDropped"),
  ofThing("ThingBought"),
  ofThing("ThingNotBought"),
  bare("BoughtCleared"),
  z.strictObject({ type: z.literal("Undone"), undoes: text }),
]);

const houseEvent: z.ZodMiniType<HouseEvent> = z.strictObject({
  seq: z.int().check(z.positive()),
  at: moment,
  command: text,
  happening,
});

/** An order about the house from a socket or a disk. Error: one sentence naming the field. */
export const parseHouseOrder = (value: unknown): Result<HouseOrder, string> => read(order, value, "order");

/** An event of the household log from disk or a socket. Error: one sentence naming the field. */
export const parseHouseEvent = (value: unknown): Result<HouseEvent, string> =>
  read(houseEvent, value, "event of the house");

function read<T>(schema: z.ZodMiniType<T>, value: unknown, what: string): Result<T, string> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? "" : ` at ${issue.path.join(".")}`;
  return err(`That ${what} makes no sense${where}: ${issue?.message ?? "it has another shape"}.`);
}
