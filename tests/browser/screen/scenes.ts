import type { Misheard } from "../../../core/speech/misheard/misheard.ts";
import { instant, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { timerId } from "../../../core/cook/orders.ts";
import { cookUntil, give, ownPantry } from "./evening.ts";
import type { Stopped } from "./evening.ts";
import type { Scene } from "./page.ts";

const start = instant(Date.UTC(2031, 5, 14, 16, 40));

/** The states in which the page is looked at. */
export const sceneNames = [
  "start",
  "empty",
  "away",
  "loading",
  "offline",
  "step",
  "own",
  "busy",
  "helped",
  "ring",
  "rings",
  "attend",
  "heat",
  "wait",
  "serve",
  "held",
  "ended",
  "lost",
  "trouble",
  "noisy",
  "misheard",
] as const;
export type SceneName = (typeof sceneNames)[number];

/** Misheard sentences of each kind, of which one is corrected, and one of which the ear made nothing. */
const misheardBy = (now: Instant): readonly Misheard[] => [
  {
    id: "a",
    at: plus(now, minutes(-9)),
    heard: "nest stab",
    cameTo: "nothing",
    likely: ["next step", "last step", "what next"],
    meant: "next step",
  },
  {
    id: "b",
    at: plus(now, minutes(-7)),
    heard: "set a timer for fifty minutes",
    cameTo: "asked-back",
    likely: ["set a timer for fifteen minutes", "set a timer for five minutes"],
    meant: null,
  },
  {
    id: "c",
    at: plus(now, minutes(-2)),
    heard: "pause the timer",
    cameTo: "taken-back",
    likely: ["stop the timer", "cancel the timer"],
    meant: null,
  },
  { id: "d", at: plus(now, minutes(-1)), heard: "", cameTo: "nothing", likely: [], meant: null },
];

/** Each state with the events that lead to it. */
export async function scenes(): Promise<Readonly<Record<SceneName, Scene>>> {
  const { pantry, meal } = await ownPantry();
  const bare = {
    events: [],
    now: start,
    isLoaded: true,
    link: "joined",
    pantry,
    look: "light",
    ear: { kind: "waiting", sentence: null, loading: null },
    room: "quiet",
    awake: null,
    misheard: null,
    foods: null,
  } as const;
  const of = ({ log, now }: Stopped): Scene => ({ ...bare, events: log.events, now });
  const running =
    (count: number) =>
    (session: { readonly timers: ReadonlyMap<unknown, { readonly run: { readonly state: string } }> }) =>
      [...session.timers.values()].filter(({ run }) => run.state === "running").length >= count;
  const step = cookUntil(
    meal,
    start,
    ([first], session) => first?.kind === "do" && first.task.step.uses.length >= 2 && running(2)(session),
  );
  const busy = cookUntil(
    meal,
    start,
    ([first], session) => (first?.kind === "do" || first?.kind === "put-on") && running(2)(session),
  );
  const ring = cookUntil(meal, start, ([first], session) => first?.kind === "ring" && running(2)(session));
  const attend = cookUntil(meal, start, ([first]) => first?.kind === "attend");
  const heat = cookUntil(meal, start, ([first]) => first?.kind === "heat");
  const wait = cookUntil(meal, start, ([first]) => first?.kind === "wait");
  const serve = cookUntil(meal, start, ([first]) => first?.kind === "serve");
  const later = plus(step.now, minutes(1));
  const own = give(
    give(step.log, later, {
      type: "StartTimer",
      timer: timerId("own"),
      name: "rolls",
      span: { low: minutes(75), high: minutes(75) },
      dish: null,
    }),
    later,
    { type: "PauseTimer", timer: timerId("own") },
  );
  const helped = (["helper", "second helper"] as const).reduce(
    (log, helper) => give(log, later, { type: "WelcomeHelper", helper }),
    step.log,
  );
  const rings = (
    [
      ["beans", 1],
      ["peas", 1],
      ["corn", 30],
    ] as const
  ).reduce(
    (log, [name, takes]) =>
      give(log, step.now, {
        type: "StartTimer",
        timer: timerId(name),
        name,
        span: { low: minutes(takes), high: minutes(takes) },
        dish: null,
      }),
    step.log,
  );
  return {
    start: bare,
    empty: {
      ...bare,
      pantry: {
        meals: [],
        mistakes: [
          {
            file: "meals/tide.yaml",
            line: 3,
            field: "dishes.eel",
            sentence: "There is no dish called eel; write the name of a file in recipes/dishes.",
          },
        ],
        cooking: null,
      },
    },
    away: { ...bare, pantry: null, link: "lost" },
    loading: { ...bare, isLoaded: false, link: "connecting" },
    offline: { ...bare, isLoaded: false, link: "lost" },
    step: of(step),
    own: { ...of({ log: own, now: later }) },
    busy: of(busy),
    helped: of({ log: helped, now: later }),
    ring: of({ ...ring, now: plus(ring.now, minutes(0.6)) }),
    rings: of({ log: rings, now: plus(step.now, minutes(1.1)) }),
    attend: of(attend),
    heat: of(heat),
    wait: of(wait),
    serve: of(serve),
    held: of({ log: give(step.log, later, { type: "HoldEverything" }), now: later }),
    ended: of({ log: give(serve.log, serve.now, { type: "EndMeal" }), now: serve.now }),
    lost: {
      ...of(busy),
      link: "lost",
      awake:
        "This browser cannot keep the screen awake; set the screen to stay on in the device's own settings.",
    },
    misheard: { ...of(step), misheard: misheardBy(step.now) },
    noisy: { ...of(step), room: "too-loud" },
    trouble: {
      ...of(step),
      ear: {
        kind: "trouble",
        sentence: "The microphone is not allowed here. Allow it beside the address, then touch the ear.",
        loading: null,
      },
    },
  };
}
