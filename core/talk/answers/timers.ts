import { timerId } from "../../cook/orders.ts";
import type { Order } from "../../cook/orders.ts";
import type { Timer } from "../../cook/session.ts";
import { timeLeft } from "../../cook/timer.ts";
import type { Step } from "../../recipe/model.ts";
import type { Span } from "../../units/duration.ts";
import { spokenDuration, spokenRoughly, spokenSpan } from "../../units/duration.ts";
import { numberWords } from "../../units/number-words.ts";
import type { Seconds } from "../../units/quantity.ts";
import { minutes } from "../../units/quantity.ts";
import { asksWhich } from "../find.ts";
import { objectOf } from "../names.ts";
import { currentTask, findTask } from "../find-task.ts";
import type { IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Consent, Outcome, Scene } from "../outcome.ts";
import { asksFor, asksLeave, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { inParts, sayTimeLeft } from "../speech.ts";
import { forTimer, isRinging, nameFor, openTimers, theTimer, timerLabel, withTimer } from "./timer-names.ts";

/** Figures that the ear confuses: fifteen and fifty. */
const TWINS: readonly (readonly [number, number])[] = [
  [13, 30],
  [14, 40],
  [15, 50],
  [16, 60],
  [17, 70],
  [18, 80],
  [19, 90],
];

/** A new timer. A length that does not suit the step, where its twin in sound does, is asked back. */
export function startTimer(intent: IntentOf<"StartTimer">, scene: Scene, kitchen: Kitchen): Outcome {
  if (intent.span === null) return asksFor(intent, "For how long?");
  const twin = likelier(intent, scene, kitchen);
  if (twin !== null) {
    const both = [twin, intent.span].map((span) => ({ name: spokenSpan(span), intent: { ...intent, span } }));
    return asksWhich(both, "Did you say");
  }
  return begin(intent, intent.span, scene, kitchen);
}

/** The same without doubts: what the cook has just chosen or corrected. */
export function startSurely(intent: IntentOf<"StartTimer">, scene: Scene, kitchen: Kitchen): Outcome {
  return intent.span === null ? asksFor(intent, "For how long?") : begin(intent, intent.span, scene, kitchen);
}

function begin(intent: IntentOf<"StartTimer">, span: Span, scene: Scene, kitchen: Kitchen): Outcome {
  const { name, dish } = nameFor(intent.name, scene, kitchen);
  const timer = timerId(`timer-${kitchen.utteranceId}`);
  return ordered(kitchen, [{ type: "StartTimer", timer, name, span, dish }], ({ session }) => {
    const started = session.timers.get(timer);
    const length = capital(spokenSpan(span));
    return started === undefined
      ? `${length} from now.`
      : `${length} from now,${forTimer(started, session)}.`;
  });
}

/** The length that sounds alike and fits the step, where the one heard does not; else null. */
function likelier(intent: IntentOf<"StartTimer">, scene: Scene, kitchen: Kitchen): Span | null {
  const { span, name } = intent;
  if (span === null || span.low !== span.high) return null;
  const task = name === null ? null : findTask(name, scene, kitchen, "ask");
  const step =
    task?.kind === "one" ? task.value.step : name === null ? currentTask(scene, kitchen)?.step : undefined;
  const heard = span.high / 60;
  const twin = TWINS.flatMap(([low, high]) => (heard === low ? [high] : heard === high ? [low] : []))[0];
  if (step === undefined || twin === undefined || fits(heard, step) || !fits(twin, step)) return null;
  return { low: minutes(twin), high: minutes(twin) };
}

/** Within a fifth of what the recipe says. */
const fits = (count: number, { time }: Step): boolean =>
  minutes(count) >= time.low * 0.8 && minutes(count) <= time.high * 1.2;

const isOpen = ({ run }: Timer): boolean => run.state !== "stopped";

/** How long one timer has. */
export function askTimer(intent: IntentOf<"AskTimer">, scene: Scene, kitchen: Kitchen): Outcome {
  if (intent.timer === null && openTimers(scene.session).length > 1) return askTimers(scene, kitchen);
  return withTimer(
    intent.timer,
    scene,
    kitchen,
    isOpen,
    (timer) => ({ type: "AskTimer", timer }),
    (timer) => told(`${capital(timerLabel(timer, scene.session))}: ${sayTimeLeft(timer, kitchen)}.`),
  );
}

/** All timers, the next to ring first. */
export function askTimers({ session }: Scene, kitchen: Kitchen): Outcome {
  const open = openTimers(session);
  if (open.length === 0) return told("No timer is on.");
  const items = open.map((timer) => `${timerLabel(timer, session)}, ${sayTimeLeft(timer, kitchen)}`);
  return inParts(open.length === 1 ? "One timer:" : `${capital(numberWords(open.length))} timers:`, items);
}

/** More time: what was said, or what the recipe gives a step that is not done. */
export function lengthen(intent: IntentOf<"Lengthen">, scene: Scene, kitchen: Kitchen): Outcome {
  return withTimer(
    intent.timer,
    scene,
    kitchen,
    isOpen,
    (timer) => ({ ...intent, timer }),
    (timer) => {
      const step = scene.session.tasks.find(({ id }) => id === timer.task)?.step;
      const by = intent.by ?? step?.extend?.by.high ?? null;
      const named = { ...intent, timer: { by: "timer", timer: timer.id } } as const;
      if (by === null) return asksFor(named, "How much longer?");
      return ordered(kitchen, [{ type: "LengthenTimer", timer: timer.id, by }], ({ session }) =>
        `${capital(more(by))}${forTimer(timer, session)}. ${leftNow(session.timers.get(timer.id), kitchen)}`.trim(),
      );
    },
  );
}

/** "two more minutes", "half an hour more". */
function more(by: Seconds): string {
  const said = spokenDuration(by);
  const counted = /^([a-z-]+) (minutes?|hours?|seconds?)$/.exec(said);
  return counted === null ? `${said} more` : `${counted[1] ?? ""} more ${counted[2] ?? ""}`;
}

/** Less time. */
export function shorten(intent: IntentOf<"Shorten">, scene: Scene, kitchen: Kitchen): Outcome {
  return withTimer(
    intent.timer,
    scene,
    kitchen,
    isOpen,
    (timer) => ({ ...intent, timer }),
    (timer) => {
      const { by } = intent;
      if (by === null)
        return asksFor({ ...intent, timer: { by: "timer", timer: timer.id } }, "How much shorter?");
      return ordered(kitchen, [{ type: "ShortenTimer", timer: timer.id, by }], ({ session }) =>
        `${capital(spokenDuration(by))} off ${theTimer(timer, session)}. ${leftNow(session.timers.get(timer.id), kitchen)}`.trim(),
      );
    },
  );
}

function leftNow(timer: Timer | undefined, kitchen: Kitchen): string {
  const left = timer === undefined ? null : timeLeft(timer, kitchen.now);
  return left === null || left <= 0 ? "" : `${capital(spokenRoughly(left))} left.`;
}

type Plain = IntentOf<"PauseTimer" | "ResumeTimer" | "RestartTimer" | "StopTimer" | "CancelTimer">;

const usable: Readonly<Record<Plain["type"], (timer: Timer) => boolean>> = {
  PauseTimer: ({ run }) => run.state === "running",
  ResumeTimer: ({ run }) => run.state === "paused",
  RestartTimer: () => true,
  StopTimer: isOpen,
  CancelTimer: () => true,
};

/** Pause, resume, restart, stop or cancel one timer. */
export function changeTimer(intent: Plain, scene: Scene, kitchen: Kitchen): Outcome {
  return withTimer(
    intent.timer,
    scene,
    kitchen,
    usable[intent.type],
    (timer) => ({ ...intent, timer }),
    (timer) => {
      const order: Order = { type: intent.type, timer: timer.id };
      const label = capital(timerLabel(timer, scene.session));
      // A timer with time left is worth having back; to be asked about each one would be worse than to say how.
      const wayBack = (timeLeft(timer, kitchen.now) ?? 0) > 0 ? ' Say "undo" to have it back.' : "";
      return ordered(kitchen, [order], ({ session }) => {
        const now = session.timers.get(timer.id);
        switch (intent.type) {
          case "PauseTimer":
            return `${label}: ${now === undefined ? "paused" : sayTimeLeft(now, kitchen)}.`;
          case "ResumeTimer":
            return `${label} runs again: ${now === undefined ? "" : sayTimeLeft(now, kitchen)}.`;
          case "RestartTimer":
            return `${label} from the start: ${spokenSpan(timer.span)}.`;
          case "StopTimer":
            return `${label}: stopped.${wayBack}`;
          case "CancelTimer":
            return `${label}: gone.${wayBack}`;
        }
      });
    },
  );
}

/** All timers gone, once the cook has said yes to it. */
export function cancelAll({ session }: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  const count = session.timers.size;
  if (count === 0) return told("No timer is on.");
  const all =
    count === 1 ? "the only timer" : count === 2 ? "both timers" : `all ${numberWords(count)} timers`;
  if (consent === "wanted") return asksLeave({ type: "CancelAllTimers" }, `Cancel ${all}?`);
  return ordered(kitchen, [{ type: "CancelAllTimers" }], () => "All timers are gone.");
}

/** A new name for a timer. */
export function rename(intent: IntentOf<"RenameTimer">, scene: Scene, kitchen: Kitchen): Outcome {
  const latest = openTimers(scene.session).findLast(({ task }) => task === null);
  const mention =
    intent.timer ?? (latest === undefined ? null : ({ by: "timer", timer: latest.id } as const));
  return withTimer(
    mention,
    scene,
    kitchen,
    () => true,
    (timer) => ({ ...intent, timer }),
    (timer) => {
      const named = { ...intent, timer: { by: "timer", timer: timer.id } } as const;
      const { name } = nameFor(intent.name, scene, kitchen);
      if (name === null) return asksFor(named, "What shall I call it?");
      return ordered(
        kitchen,
        [{ type: "RenameTimer", timer: timer.id, name }],
        () => `From now on I call it ${name}.`,
      );
    },
  );
}

/** "I hear it": every ring that goes on is answered, or the one that was named or touched. */
export function hearRing(mention: Mention | null, scene: Scene, kitchen: Kitchen): Outcome {
  const { session } = scene;
  const ringing = [...session.timers.values()].filter((timer) => isRinging(timer, kitchen));
  if (ringing.length === 0) return told("All right.");
  if (mention === null) return answerRings(ringing, scene, kitchen);
  return withTimer(
    mention,
    scene,
    kitchen,
    (timer) => isRinging(timer, kitchen),
    (timer) => ({ type: "HearRing", timer }),
    (timer) => answerRings([timer], scene, kitchen),
  );
}

function answerRings(rings: readonly Timer[], { session }: Scene, kitchen: Kitchen): Outcome {
  const orders = rings.map((timer): Order => ({ type: "AnswerRing", timer: timer.id }));
  const task = rings.find((timer) => timer.task !== null)?.task ?? null;
  const about = objectOf(session.tasks.find(({ id }) => id === task)?.step.title ?? "");
  return ordered(kitchen, orders, (then) => {
    const still = [...then.session.timers.values()].filter((timer) => isRinging(timer, kitchen));
    const rest =
      still.length === 0
        ? ""
        : ` Still ringing: ${still.map((timer) => timerLabel(timer, session)).join(", ")}.`;
    return about === ""
      ? `All right.${rest}`
      : `Good. When you have looked, say "done with the ${about}" or "not yet".${rest}`;
  });
}
