import { computed, effect, signal } from "@preact/signals";
import type { FoodsAtHand } from "../core/talk/model.ts";
import { asSaid } from "../core/speech/respelling.ts";
import { cookHasSpoken } from "./kitchen/cook-has-spoken.ts";
import { createCaller } from "./kitchen/caller.ts";
import { createClock } from "./kitchen/clock.ts";
import type { EarTrial } from "./kitchen/ear-trial.ts";
import { createMealStore } from "./kitchen/meal-store.ts";
import { lazyBuyingDesk } from "./kitchen/lazy-buying.ts";
import type { HouseKeeper } from "./kitchen/house-keeper.ts";
import { keepFoods } from "./kitchen/lazy-foods.ts";
import { keepHouse } from "./kitchen/lazy-house.ts";
import { lazyMeal } from "./kitchen/lazy-meal.ts";
import { lazyMisheardRecord } from "./kitchen/lazy-misheard.ts";
import { createSettings } from "./kitchen/settings.ts";
import { letWatch } from "./kitchen/watched.ts";
import { httpSpeech } from "./sound/fetch-speech.ts";
import { lazyOutput } from "./sound/lazy-output.ts";
import { createSound } from "./sound/player.ts";
import { createWakeLock } from "./sound/wake-lock.ts";
import { lazyEar } from "./ui/ear/lazy-ear.ts";
import { showPage } from "./ui/show-page.tsx";

const { settings } = createSettings();
const clock = createClock();
const saying = signal<string | null>(null);
let spoken = "";
const trial = signal<EarTrial | null>(null);
const deaf = signal(false);
const misheard = lazyMisheardRecord(deaf);
const notice = signal<string | null>(null);
// Before what speaks: a page that is loaded in the middle of a meal may have something to say at once.
const ear = lazyEar(
  async () => {
    const [{ createEar }, earshot] = await Promise.all([import("./kitchen/ear.ts"), caller.earshot()]);
    return createEar({ caller, earshot, sound, settings, saying, trial, deaf, misheard, now: clock.read });
  },
  () => caller.hasWords(),
);
const sound = createSound({
  floor: () => cookHasSpoken(ear),
  output: lazyOutput(async () => (await import("./sound/howler-output.ts")).howlerOutput()),
  fetchSpeech: (text, query) => {
    const { voice, respellings } = settings.peek();
    return httpSpeech(voice)(asSaid(text, respellings), query);
  },
  onCaption: (caption) => {
    if (caption.kind === "notice") notice.value = caption.text;
    else spoken = caption.text;
    if (saying.value !== null) saying.value = spoken;
  },
  onSpeaking: (edge) => {
    saying.value = edge === "start" ? spoken : null;
    // What is heard again is no news any more.
    if (edge === "start") notice.value = null;
  },
});
// How it speaks: another text, and what was fetched in the manner before is not wanted any more.
computed(() => JSON.stringify([settings.value.voice, settings.value.respellings])).subscribe(() => {
  sound.revoice();
});
const store = createMealStore(clock, (sentence) => caller.tell(sentence));
const house = signal<HouseKeeper | null>(null);
const foods = signal<FoodsAtHand | null>(null);
const buying = lazyBuyingDesk(clock);
const caller = createCaller(clock, store, sound, async () => (await import("./kitchen/words.ts")).words, {
  house,
  foods,
});
const dark = signal<string | null>(null);
const wakeLock = createWakeLock((state) => {
  dark.value = "sentence" in state ? state.sentence : null;
});

// Also after a reload in the middle of a meal.
effect(() => {
  const phase = store.session.value?.phase.state ?? "ended";
  void (phase === "ended" ? wakeLock.release() : wakeLock.hold());
});

document.addEventListener("pointerdown", () => {
  // Browsers let a page sound only after a touch: the first one anywhere will do.
  if (sound.audioState() === "locked") void sound.unlock().then(() => (notice.value = null));
});
letWatch(caller, sound, ear);

const root = document.querySelector("#galley");
if (root === null) throw new Error("the page has no #galley to stand in");
root.replaceChildren();
showPage(
  {
    clock,
    store,
    caller,
    ear,
    settings,
    sayAloud: (text) => void sound.say(text, { priority: "answer" }),
    trial,
    misheard,
    buying,
    foods,
    meal: lazyMeal,
    house,
    awake: computed(() => dark.value ?? notice.value),
    wake: () => {
      void sound.unlock();
      void ear.start();
    },
  },
  root,
);
// Now, and not with the first sentence: none is to wait for it.
caller.fetchWords();
keepFoods(foods, {
  state: store.houseLine.state,
  begunAt: computed(() => store.session.value?.begunAt ?? null),
});
keepHouse(house, {
  clock,
  meal: store,
  line: store.houseLine,
  buying,
  tell: caller.tell,
  remark: caller.remark,
});
