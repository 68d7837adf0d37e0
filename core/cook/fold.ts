import type { Instant } from "../units/quantity.ts";
import type { Pace } from "../pace/pace.ts";
import { atPace } from "../pace/pace.ts";
import { expandTasks } from "../plan/tasks.ts";
import { noteKey } from "../next-time/note.ts";
import type { Helper } from "../plan/worker.ts";
import type { InHand, Progress, Task, TaskId } from "../plan/model.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type {
  Happening,
  HelperHappening,
  MealEvent,
  MealHappening,
  NoteHappening,
  PaceHappening,
  TaskHappening,
} from "./events.ts";
import type { MealLog, Session } from "./session.ts";
import { withAmountChanged } from "./change-amount.ts";
import { evolveHelpers } from "./fold-helpers.ts";
import { evolveTimer } from "./fold-timers.ts";
import { isThere, outOfHand, withHelperAt } from "./hands.ts";
import { withNoteAnswered } from "./notes.ts";
import { swapped } from "./swap.ts";
import { withServings } from "./change-servings.ts";
import { withWay } from "./take-way.ts";

/** Nothing has happened yet. */
export const emptyLog: MealLog = { events: [], session: null };

/**
 * What did happen. Total: never refuses, never throws. Events must follow on the log's last
 * `seq`; ones that it holds already are passed over, so a snapshot may overlap.
 */
export function appendEvents(log: MealLog, events: readonly MealEvent[]): MealLog {
  const last = log.events.at(-1)?.seq ?? 0;
  const fresh = events.filter((event) => event.seq > last);
  if (fresh.length === 0) return log;
  const all = [...log.events, ...fresh];
  if (fresh.some((event) => event.happening.type === "Undone")) return { events: all, session: fold(all) };
  return { events: all, session: fresh.reduce<Session | null>(evolve, log.session) };
}

/** The commands that were taken back. */
export function undoneCommands(events: readonly MealEvent[]): ReadonlySet<string> {
  return new Set(events.flatMap(({ happening }) => (happening.type === "Undone" ? [happening.undoes] : [])));
}

function fold(events: readonly MealEvent[]): Session | null {
  const undone = undoneCommands(events);
  return events.filter((event) => !undone.has(event.command)).reduce<Session | null>(evolve, null);
}

/** One event further. A second `MealBegun` starts the evening afresh; before the first, events mean nothing. */
export function evolve(session: Session | null, event: MealEvent): Session | null {
  const { happening, at } = event;
  if (happening.type === "MealBegun") return begun(happening.meal, happening.serveAt, at);
  if (session === null) return null;
  return { ...evolvePart(session, happening, at), lastAt: at };
}

function evolvePart(
  session: Session,
  happening: Exclude<Happening, { readonly type: "MealBegun" }>,
  at: Instant,
): Session {
  if ("helper" in happening && !("task" in happening)) return evolveHelpers(session, happening);
  if ("timer" in happening) return evolveTimer(session, happening, at);
  if ("task" in happening && !("moment" in happening)) return evolveTask(session, happening, at);
  if (isOfNotes(happening)) return evolveNotes(session, happening);
  return isOfPace(happening) ? evolvePace(session, happening) : evolveMeal(session, happening, at);
}

/** Whether something happened to what is known of the cook's pace. */
export const isOfPace = (happening: Happening): happening is PaceHappening =>
  happening.type.startsWith("Pace");

function begun(meal: CookingMeal, serveAt: Instant | null, at: Instant): Session {
  const tasks = expandTasks(meal);
  return {
    meal,
    tasks,
    paces: [],
    phase: { state: "cooking" },
    begunAt: at,
    serveAt,
    lull: null,
    progress: new Map(tasks.map((task) => [task.id, { state: "waiting" }])),
    focus: null,
    helpers: [],
    handed: new Map(),
    wishes: [],
    course: null,
    attended: new Map(),
    ovens: meal.kitchen.ovens.map((oven) => ({ oven: oven.name, heat: null, setAt: null })),
    ovenTurns: [],
    timers: new Map(),
    timerCount: 0,
    swaps: [],
    prepared: new Set(),
    offered: [],
    noted: [],
    lastAt: at,
  };
}

function evolveMeal(session: Session, happening: MealHappening, at: Instant): Session {
  switch (happening.type) {
    case "EverythingHeld":
      return { ...session, phase: { state: "held", since: at } };
    case "WentOn":
      return { ...session, phase: { state: "cooking" } };
    case "MealEnded":
      return { ...emptyHanded(session), phase: { state: "ended", at } };
    case "ServingSet":
      return { ...session, serveAt: happening.serveAt };
    case "LullKept":
    case "LullSet":
      return { ...session, lull: happening.length };
    case "OvenSet":
      return {
        ...session,
        ovens: session.ovens.map((oven) =>
          oven.oven === happening.oven ? { oven: oven.oven, heat: happening.heat, setAt: at } : oven,
        ),
        ovenTurns: [...session.ovenTurns, { oven: happening.oven, heat: happening.heat, at }],
      };
    case "AttentionGiven":
      return { ...session, attended: new Map(session.attended).set(happening.moment, at) };
    case "SwapUsed":
      return swapped(session, happening);
    case "WayTaken":
      return withWay(session, happening);
    case "PreparingFinished":
    case "PreparingReopened":
      return { ...session, prepared: preparedThen(session.prepared, happening) };
    case "ServingsChanged":
      return withServings(session, happening);
    case "AmountChanged":
      return withAmountChanged(session, happening);
    case "CourseLaid":
      return { ...session, course: new Map(happening.course.map(({ task, ...step }) => [task, step])) };
    case "Undone":
      return session;
  }
}

const isOfNotes = (happening: Happening): happening is NoteHappening =>
  /^Note|^NextTime/.test(happening.type);

function evolveNotes(session: Session, happening: NoteHappening): Session {
  switch (happening.type) {
    case "NextTimeNoted":
      return { ...session, noted: [...session.noted, happening.note] };
    case "NotesOffered":
      return {
        ...session,
        offered: happening.notes.map((note) => ({ key: noteKey(note), note, state: "open" })),
      };
    case "NoteAnswered":
      return withNoteAnswered(session, happening.key, happening.answer);
  }
}

type OfPreparing = Extract<MealHappening, { readonly portions: unknown }>;

function preparedThen(before: Session["prepared"], { type, portions }: OfPreparing): Session["prepared"] {
  return new Set(
    type === "PreparingFinished"
      ? [...before, ...portions]
      : [...before].filter((id) => !portions.includes(id)),
  );
}

function evolvePace(session: Session, happening: PaceHappening): Session {
  switch (happening.type) {
    case "PaceKnown":
      return paced(session, happening.paces);
    case "PaceSet": {
      const { kind, wish } = happening;
      return paced(
        session,
        session.paces.map((pace) => (pace.kind === kind ? { ...pace, wish } : pace)),
      );
    }
    case "PaceForgotten":
      return paced(
        session,
        session.paces.map((pace) => ({ ...pace, times: 1, steps: 0, evenings: 0, wish: null })),
      );
  }
}

const paced = (session: Session, paces: readonly Pace[]): Session => ({
  ...session,
  paces,
  tasks: atPace(session.tasks, paces),
});

const emptyHanded = (session: Session): Session => ({
  ...session,
  focus: null,
  helpers: session.helpers.map(({ helper }) => ({ helper, inHand: null })),
});

type OfTask = TaskHappening | Extract<HelperHappening, { readonly type: "TaskHanded" }>;

function evolveTask(session: Session, happening: OfTask, at: Instant): Session {
  const task = session.tasks.find((one) => one.id === happening.task);
  if (task === undefined) return session;
  switch (happening.type) {
    case "TaskCalled":
      return called(session, task, at);
    case "TaskHanded":
      return handed(session, task, happening.helper, at);
    case "TaskStarted":
      return started(session, task, at);
    case "TaskFinished":
      return ended(session, task, { state: "done", startedAt: startOf(session, task.id), at });
    case "TaskSkipped":
      return ended(session, task, { state: "skipped", at });
    case "TaskReopened":
      return withProgress(session, task.id, { state: "waiting" });
    case "TaskChosen":
      return { ...session, wishes: [task.id, ...session.wishes.filter((one) => one !== task.id)] };
    case "TaskSetAside":
      return setAside(session, task.id);
  }
}

/** A hands-on step runs from the moment that it is called; a hands-off one waits for the cook to start it. */
function called(session: Session, task: Task, at: Instant): Session {
  const free = putDown(session, session.focus, task);
  const handed = new Map(free.handed);
  handed.delete(task.id);
  return begunByHand({ ...free, handed, focus: { task: task.id, calledAt: at } }, task, at);
}

function handed(session: Session, task: Task, helper: Helper, at: Instant): Session {
  if (!isThere(session, helper)) return session;
  const before = session.helpers.find((one) => one.helper === helper)?.inHand ?? null;
  const free = putDown(session, before, task);
  const given = withHelperAt(free, helper, { task: task.id, calledAt: at });
  return begunByHand({ ...given, handed: new Map(free.handed).set(task.id, helper) }, task, at);
}

/** The evening once someone has put aside what they had in hand, and whoever had the new task has given it away. */
function putDown(session: Session, before: InHand | null, task: Task): Session {
  const free = before === null || before.task === task.id ? session : setAside(session, before.task);
  return outOfHand(free, task.id);
}

const begunByHand = (session: Session, { id, step }: Task, at: Instant): Session =>
  step.hands === "off"
    ? session
    : withProgress(session, id, { state: "running", startedAt: at, span: step.time });

function started(session: Session, task: Task, at: Instant): Session {
  const running = withProgress(session, task.id, { state: "running", startedAt: at, span: task.step.time });
  return outOfHand(running, task.id);
}

function ended(session: Session, task: Task, progress: Progress): Session {
  const closed = outOfHand(withProgress(session, task.id, progress), task.id);
  return { ...closed, wishes: closed.wishes.filter((one) => one !== task.id) };
}

function setAside(session: Session, id: TaskId): Session {
  const task = session.tasks.find((one) => one.id === id);
  const waits = task?.step.hands === "on" && session.progress.get(id)?.state === "running";
  return outOfHand(waits ? withProgress(session, id, { state: "waiting" }) : session, id);
}

const withProgress = (session: Session, id: TaskId, progress: Progress): Session => ({
  ...session,
  progress: new Map(session.progress).set(id, progress),
});

const startOf = (session: Session, id: TaskId): Instant | null => {
  const progress = session.progress.get(id);
  return progress?.state === "running" ? progress.startedAt : null;
};
