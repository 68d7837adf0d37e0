import { amountWanted, dishNoted, fits } from "../next-time/apply-note.ts";
import type { Note, NoteAnswer } from "../next-time/note.ts";
import { atPace } from "../pace/pace.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { Task } from "../plan/model.ts";
import { compare, rational, ratio, ZERO } from "../units/rational.ts";
import { err, ok } from "../units/result.ts";
import type { Instant } from "../units/quantity.ts";
import { decideAmount, withAmountChanged } from "./change-amount.ts";
import type { Decision } from "./decision.ts";
import { callOf, notYet } from "./decide-task.ts";
import type { Happening } from "./events.ts";
import type { Session } from "./session.ts";

/** More than this many times the recipe's amount was misheard. */
const mostTimes = ratio(12);

/** Keeps a note for the next time: only about what its dish has, and with an amount that can be meant. */
export function decideNote(note: Note, session: Session): Decision {
  const { change } = note;
  const dish = session.meal.dishes.find(({ id }) => id === note.dish);
  if (dish === undefined) return err({ code: "NoSuchDish", asked: note.dish });
  if (!fits(note, dish)) return err({ code: "NoSuchFood", asked: "that" });
  const kept = ok([{ type: "NextTimeNoted", note }] as const);
  if (change.kind === "times") {
    const times = rational(change.times);
    return compare(times, ZERO) > 0 && compare(times, mostTimes) <= 0 ? kept : err({ code: "NoAmount" });
  }
  if (change.kind !== "amount") return kept;
  const { ingredient, amount } = change;
  const decided = decideAmount({ dish: dish.id, ingredient, step: null, amount }, session);
  // As much as tonight is a fair wish for the next time.
  return decided.ok || decided.error.code === "AmountAlready" ? kept : decided;
}

const openTask = (note: Note, { tasks, progress }: Session): Task | undefined => {
  const { change } = note;
  if (change.kind !== "first") return undefined;
  return tasks.find(
    ({ id, dish, step }) =>
      dish.id === note.dish &&
      (change.step === null || change.step === step.id) &&
      (progress.get(id)?.state ?? "waiting") === "waiting",
  );
};

/** The cook's answer to a note. What is to come first is called at once where it may begin. */
export function decideNoteAnswer(key: string, answer: NoteAnswer, session: Session, at: Instant): Decision {
  const offered = session.offered.find((one) => one.key === key);
  if (offered === undefined || offered.state === answer || offered.state === "applied")
    return err({ code: "NoSuchNote" });
  const answered: Happening = { type: "NoteAnswered", key, answer };
  if (answer !== "applied") return ok([answered]);
  const task = openTask(offered.note, session);
  const calls = task === undefined || notYet(task, session, at) !== null ? [] : callOf(task, session);
  return ok([answered, ...calls]);
}

/** The evening after an answer; a yes changes the meal, and never the recipe. */
export function withNoteAnswered(session: Session, key: string, answer: NoteAnswer): Session {
  const offered = session.offered.map((one) => (one.key === key ? { ...one, state: answer } : one));
  const note = session.offered.find((one) => one.key === key)?.note;
  const then = { ...session, offered };
  return note === undefined || answer !== "applied" ? then : applied(then, note);
}

function applied(session: Session, note: Note): Session {
  const dish = session.meal.dishes.find(({ id }) => id === note.dish);
  if (dish === undefined || !fits(note, dish)) return session;
  const wanted = amountWanted(note, dish);
  if (wanted !== null) return withAmountChanged(session, wanted);
  const first = openTask(note, session);
  if (first !== undefined)
    return { ...session, wishes: [first.id, ...session.wishes.filter((id) => id !== first.id)] };
  const changed = dishNoted(dish, note.change);
  const dishes = session.meal.dishes.map((one) => (one.id === dish.id ? changed : one));
  const meal = { ...session.meal, dishes };
  return { ...session, meal, tasks: atPace(expandTasks(meal), session.paces) };
}
