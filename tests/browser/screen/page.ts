import { computed, signal } from "@preact/signals";
import { createBuyingDesk } from "../../../client/kitchen/buying-desk.ts";
import { createCaller } from "../../../client/kitchen/caller.ts";
import type { Caller } from "../../../client/kitchen/caller.ts";
import type { Clock } from "../../../client/kitchen/clock.ts";
import type { EarState } from "../../../client/kitchen/ear-model.ts";
import type { EarTrial, TrialHeard } from "../../../client/kitchen/ear-trial.ts";
import type { MealStore, Wanted } from "../../../client/kitchen/meal-store.ts";
import { createMisheardRecord } from "../../../client/kitchen/misheard-record.ts";
import { defaultSettings } from "../../../client/kitchen/settings.ts";
import type { Settings } from "../../../client/kitchen/settings.ts";
import { fetchMeal } from "../../../client/kitchen/fetch-meal.ts";
import { words } from "../../../client/kitchen/words.ts";
import type { Sound } from "../../../client/sound/player.ts";
import { browserMisheardStore } from "../../../client/storage/misheard-store.ts";
import type { MisheardStore } from "../../../client/storage/misheard-store.ts";
import { showPage } from "../../../client/ui/show-page.tsx";
import { decide, numbered } from "../../../core/cook/decide.ts";
import type { MealEvent } from "../../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { openFoodBook } from "../../../core/sync/food-book-packed.ts";
import { packedFoodBook } from "../../../core/sync/food-book-schema.ts";
import type { Pantry } from "../../../core/sync/protocol.ts";
import type { RoomNoise } from "../../../core/speech/room-noise.ts";
import type { Misheard } from "../../../core/speech/misheard/misheard.ts";
import { toWav } from "../../../core/sound/wav-file.ts";
import { foodTalk } from "../../../core/talk/food-talk.ts";
import type { FoodsAtHand } from "../../../core/talk/model.ts";
import { instant } from "../../../core/units/quantity.ts";
import { memoryMisheardStore } from "../../client/kitchen/memory-misheard-store.ts";

/** What the page is to show: the real screen and the real conversation over a meal store kept in memory. */
export interface Scene {
  readonly events: readonly MealEvent[];
  /** Epoch milliseconds; the kitchen's clock stands still there. */
  readonly now: number;
  readonly isLoaded: boolean;
  readonly link: MealStore["link"]["value"];
  readonly pantry: Pantry | null;
  readonly look: Settings["look"];
  readonly ear: EarState;
  readonly room: RoomNoise;
  readonly awake: string | null;
  /** What is in the record of misheard sentences; null where it is off and empty. */
  readonly misheard: readonly Misheard[] | null;
  /** What is known of foods and diets, as it comes over the wire; null: it is not here. */
  readonly foods: unknown;
}

/** What a test can do from outside the page. */
export interface ScreenBench {
  readonly caller: Caller;
  readonly store: MealStore;
  /** Where this browser would keep misheard sentences; the scenes do not use it. */
  readonly misheardStore: MisheardStore;
  readonly begun: readonly (readonly [string, Wanted])[];
  readonly woken: () => number;
  readonly listened: () => number;
  readonly settings: () => Settings;
  /** Whether the ear is being tried out. */
  readonly isTrying: () => boolean;
  /** What the screen has asked the voice to say by itself. */
  readonly said: () => readonly string[];
  /** Hands a sentence to whoever tries out the ear. */
  readonly sayInTrial: (heard: TrialHeard) => void;
  /** Tells it the level of the voice and of the room, in dBFS. */
  readonly levelsInTrial: (voiceDb: number, roomDb: number) => void;
  /** Makes the room quiet or loud. */
  readonly makeRoom: (noise: RoomNoise) => void;
  /** Moves the kitchen's clock. */
  readonly turnTo: (now: number) => void;
}

const silence: Sound = {
  say: async () => "shown",
  stopTalking: () => undefined,
  prefetch: () => undefined,
  revoice: () => undefined,
  isSpeaking: () => false,
  louder: () => ({ value: 1, moved: true }),
  softer: () => ({ value: 1, moved: true }),
  slower: () => ({ value: 1, moved: true }),
  faster: () => ({ value: 1, moved: true }),
  signal: () => undefined,
  ring: () => undefined,
  stopRing: () => undefined,
  stopAllRings: () => undefined,
  ringing: () => [],
  unlock: async () => "ready",
  audioState: () => "ready",
  onAudioState: () => () => undefined,
  journal: () => [],
};

function show(scene: Scene): ScreenBench {
  const now = signal(instant(scene.now));
  const clock: Clock = {
    now,
    read: () => now.value,
    utcOffsetMinutes: () => 0,
    slept: signal(null),
    onDevice: (at) => at,
    follow: () => undefined,
    close: () => undefined,
  };
  const log = signal(appendEvents(emptyLog, scene.events));
  const session = computed(() => log.value.session);
  const begun: [string, Wanted][] = [];
  const store: MealStore = {
    link: signal(scene.link),
    isLoaded: signal(scene.isLoaded),
    log,
    session,
    sheet: computed(() => (session.value === null ? null : runSheetOf(session.value, now.value))),
    waiting: signal(scene.link === "lost" ? 2 : 0),
    give: (orders) => {
      for (const order of orders) {
        const command = { id: crypto.randomUUID(), at: now.value, order };
        const decision = decide(command, log.value);
        if (decision.ok) log.value = appendEvents(log.value, numbered(command, log.value, decision.value));
      }
    },
    begin: async (...meal) => {
      begun.push(meal);
      return null;
    },
    pantry: async () => {
      if (scene.pantry === null) throw new Error("away");
      return scene.pantry;
    },
    close: () => undefined,
  };
  const foods: FoodsAtHand | null =
    scene.foods === null ? null : { book: openFoodBook(packedFoodBook.parse(scene.foods)), talk: foodTalk };
  const caller = createCaller(clock, store, silence, async () => words, { foods: signal(foods) });
  const room = signal(scene.room);
  const record = createMisheardRecord({
    store: memoryMisheardStore(scene.misheard ?? [], toWav(new Float32Array(1_600), 16_000)),
    playRecording: () => ({ stop: () => undefined }),
    deaf: signal(false),
    newId: () => crypto.randomUUID(),
  });
  // The test answers what it asks the server.
  const desk = createBuyingDesk(
    () => crypto.randomUUID(),
    () => now.value,
  );
  const trial = signal<EarTrial | null>(null);
  const settings = signal<Settings>({
    ...defaultSettings,
    look: scene.look,
    keepMisheard: scene.misheard !== null,
  });
  const said: string[] = [];
  let [woken, listened] = [0, 0];
  const root = document.querySelector("#galley");
  if (root === null) throw new Error("the page has no #galley to stand in");
  showPage(
    {
      clock,
      store,
      caller,
      settings,
      sayAloud: (text) => void said.push(text),
      trial,
      misheard: async () => record,
      buying: async () => desk,
      foods: signal(foods),
      meal: fetchMeal,
      house: signal(null),
      awake: signal(scene.awake),
      wake: () => (woken += 1),
      ear: {
        state: signal(scene.ear),
        level: signal(0.4),
        partial: signal(""),
        room,
        prepare: async () => undefined,
        start: async () => undefined,
        listenOnce: () => (listened += 1),
        stop: () => undefined,
      },
    },
    root,
  );
  return {
    caller,
    store,
    misheardStore: browserMisheardStore(),
    begun,
    woken: () => woken,
    listened: () => listened,
    settings: () => settings.value,
    said: () => said,
    isTrying: () => trial.value !== null,
    sayInTrial: (heard) => trial.value?.onHeard(heard),
    levelsInTrial: (voiceDb, roomDb) => {
      trial.value?.onLevel(voiceDb);
      trial.value?.onRoom({ floorDb: roomDb, speechDb: null });
    },
    makeRoom: (noise) => (room.value = noise),
    turnTo: (at) => (now.value = instant(at)),
  };
}

declare global {
  // The test drives the page through this one name.
  var showScene: (scene: Scene) => void;
  var bench: ScreenBench;
}

globalThis.showScene = (scene) => {
  globalThis.bench = show(scene);
};
