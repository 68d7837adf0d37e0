import { batch, effect, untracked } from "@preact/signals";
import type { Cue } from "../../core/cook/calls.ts";
import { cuesAt } from "../../core/cook/cues.ts";
import { callable, comingSteps } from "../../core/cook/next-call.ts";
import { freeWorkers } from "../../core/cook/hands.ts";
import { afterSaying, nothingSaid, toSay } from "../../core/cook/said-cues.ts";
import type { SaidCues } from "../../core/cook/said-cues.ts";
import { sayStep } from "../../core/cook/say-call.ts";
import type { Session } from "../../core/cook/session.ts";
import type { RunSheet } from "../../core/plan/model.ts";
import { spokenRoughly } from "../../core/units/duration.ts";
import { between, later, minutes, plus, seconds } from "../../core/units/quantity.ts";
import type { Instant, Seconds } from "../../core/units/quantity.ts";
import type { Sound } from "../sound/player.ts";
import { isWaking } from "./clock.ts";
import type { Clock, Sleep } from "./clock.ts";
import type { MealStore } from "./meal-store.ts";
import type { LinkState } from "./server-link.ts";

/** A ring that was missed for longer than this is said with its age. */
const lateRing = seconds(20);

/** Something else than a ring that came up longer ago was said by another page, or is no news any more. */
const stale = minutes(3);

/** What says the cues. */
export interface CueLoop {
  /** Does what an answer brings about; what its text tells of that is not said again as a cue. */
  readonly answer: (text: string, deed: () => void) => void;
  readonly close: () => void;
}

/** Takes each cue to say: its text and what it is about. */
export type OnCue = (text: string, cue: Cue) => void;

/** Tells all at once what came up while the device slept; false where it does not, and then each is told by itself. */
export type OnWoken = (asleep: Seconds, session: Session, sheet: RunSheet, now: Instant) => boolean;

/** Says unasked what is due, each thing once and once more. */
export function sayCues(
  clock: Clock,
  store: MealStore,
  sound: Sound,
  onCue: OnCue,
  onWoken: OnWoken = () => false,
): CueLoop {
  let said: SaidCues = nothingSaid;
  let meal: Instant | null = null;
  const newSleep = sleepsOf(clock);
  const fetchAhead = onceEach(sound);
  const loop = effect(() => {
    // Woken by each second and each change, and on time for a change between two seconds.
    const now = later(clock.now.value, clock.read());
    const [session, sheet] = [store.session.value, store.sheet.value];
    const woken = newSleep(now);
    if (woken === "waking" || session === null || sheet === null) return;
    if (meal !== session.begunAt) [meal, said] = [session.begunAt, nothingSaid];
    const due = toSay(cuesAt(session, sheet, now), said, now);
    said = afterSaying(said, due, now);
    untracked(() => {
      const isTold = woken !== null && onWoken(between(woken.from, woken.to), session, sheet, now);
      for (const cue of isTold ? due.filter(isApart) : due)
        if (isNews(cue, now)) onCue(withAge(cue, now), cue);
      fetchAhead(comingSteps(session, sheet, now).map(sayStep));
      if (mustCall(store.link.value, session) && callable(session, sheet, now).length > 0)
        store.give([{ type: "Tick" }]);
    });
  });

  const told = (text: string): void => {
    said = afterSaying(said, coveredBy(text, store, said, clock.read()), clock.read());
  };

  return {
    // One batch: else the loop would call what the deed makes due before the answer has told it.
    answer: (text, deed) =>
      batch(() => {
        deed();
        if (text !== "") told(text);
      }),
    close: loop,
  };
}

/** What an answer tells a little early would be told again a little later. */
function coveredBy(text: string, store: MealStore, said: SaidCues, now: Instant): readonly Cue[] {
  const [session, sheet] = [store.session.value, store.sheet.value];
  if (session === null || sheet === null) return [];
  const soon = plus(now, minutes(1));
  return toSay(cuesAt(session, sheet, soon), said, soon).filter((cue) => text.includes(cue.say));
}

/** Asks for the voice of the coming steps whenever they are others than before, after that of what is said now. */
function onceEach(sound: Sound): (texts: readonly string[]) => void {
  let fetched = "";
  return (texts) => {
    if (texts.join() !== fetched) setTimeout(() => sound.prefetch(texts), 0);
    fetched = texts.join();
  };
}

/** Without the server nobody else calls the next step; with it, a second call would be refused. */
const mustCall = (link: LinkState, session: Session): boolean =>
  link === "lost" && session.phase.state === "cooking" && freeWorkers(session).length > 0;

/** Whether the words after a sleep leave it to be told by itself. */
const isApart = ({ call }: Cue): boolean => !["ring", "attend", "take-off"].includes(call.kind);

/** Each sleep of the device once, when it has woken up. */
function sleepsOf(clock: Clock): (now: Instant) => Sleep | "waking" | null {
  let known: Sleep | null = null;
  return (now) => {
    if (isWaking(clock, now)) return "waking";
    const sleep = clock.slept.value;
    const isNew = sleep !== known;
    known = sleep;
    return isNew ? sleep : null;
  };
}

function isNews(cue: Cue, now: Instant): boolean {
  return cue.call.kind === "ring" || cue.call.kind === "do" || between(cue.dueAt, now) < stale;
}

/** "Rang two minutes ago." goes before a ring that nobody was here to hear. */
function withAge(cue: Cue, now: Instant): string {
  const age = between(cue.dueAt, now);
  return cue.call.kind === "ring" && age > lateRing ? `Rang ${spokenRoughly(age)} ago. ${cue.say}` : cue.say;
}
