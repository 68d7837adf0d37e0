import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Replied } from "../../../client/kitchen/caller.ts";
import { createMisheardKeeper } from "../../../client/kitchen/misheard-keeper.ts";
import type { MisheardKeeper } from "../../../client/kitchen/misheard-keeper.ts";
import { createMisheardRecord } from "../../../client/kitchen/misheard-record.ts";
import type { MisheardRecord } from "../../../client/kitchen/misheard-model.ts";
import { defaultSettings } from "../../../client/kitchen/settings.ts";
import type { Settings } from "../../../client/kitchen/settings.ts";
import type { Verdict } from "../../../core/speech/verdict.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Reply } from "../../../core/talk/model.ts";
import { instant } from "../../../core/units/quantity.ts";
import { grammarOf } from "../../voice/grammars.ts";
import { memoryMisheardStore } from "./memory-misheard-store.ts";
import type { MemoryMisheardStore } from "./memory-misheard-store.ts";

const said = (words: string, rivals: readonly string[] = []): Verdict => ({
  kind: "command",
  words: words.split(" "),
  confidence: 1,
  rivals: rivals.map((rival) => rival.split(" ")),
  addressed: true,
});
const doubtful: Verdict = { kind: "none", why: "doubtful" };
const soundOf = (words: string) => ({ samples: new Float32Array(800).fill(0.5), words: words.split(" ") });

const plain: Reply = {
  intent: { type: "HoldEverything" },
  say: "",
  orders: [],
  voice: [],
  house: [],
  list: [],
  dialogue: silentDialogue,
};
const undoing: Reply = { ...plain, intent: { type: "UndoThat" }, orders: [{ type: "UndoLast" }] };

let store: MemoryMisheardStore;
let record: MisheardRecord;
let settings = signal<Settings>(defaultSettings);
let replied = signal<Replied | null>(null);
let remarks: string[] = [];
let keeper: MisheardKeeper;
let now = instant(0);

const answer = (reply: Reply): void => {
  replied.value = { reply, before: silentDialogue };
};
const kept = async (): Promise<readonly string[]> => {
  await vi.advanceTimersByTimeAsync(1_500);
  return record.sentences.value.map(({ heard, cameTo }) => `${heard}: ${cameTo}`);
};
const pass = async (s: number): Promise<void> => {
  now = instant(now + s * 1000);
  await vi.advanceTimersByTimeAsync(s * 1000);
};

beforeEach(() => {
  vi.useFakeTimers();
  store = memoryMisheardStore();
  settings = signal<Settings>({ ...defaultSettings, keepMisheard: true });
  replied = signal<Replied | null>(null);
  remarks = [];
  now = instant(1_000_000);
  let count = 0;
  record = createMisheardRecord({
    store,
    playRecording: () => ({ stop: () => undefined }),
    deaf: signal(false),
    newId: () => `id-${(count += 1)}`,
  });
  keeper = createMisheardKeeper({
    caller: {
      replied,
      grammar: signal(grammarOf("next step", "pause the timer")),
      remark: (sentence) => remarks.push(sentence),
    },
    settings,
    record: async () => record,
    now: () => now,
  });
});
afterEach(() => {
  keeper.close();
  vi.useRealTimers();
});

describe("keeping what was misheard", () => {
  it("[V90] keeps nothing while it is off, whatever is handed to it", async () => {
    settings.value = defaultSettings;
    keeper.follow(doubtful, soundOf("nest stab"), () => undefined);
    keeper.follow(said("pause the timer"), soundOf("pause the timer"), () => answer(plain));
    answer(undoing);
    expect(await kept()).toEqual([]);
  });

  it("[V90] keeps nothing of a sentence after which it was turned off", async () => {
    keeper.follow(said("pause the timer"), soundOf("pause the timer"), () => answer(plain));
    settings.value = defaultSettings;
    settings.value = { ...defaultSettings, keepMisheard: true };
    answer(undoing);
    keeper.follow(doubtful, soundOf("nest stab"), () => undefined);
    settings.value = defaultSettings;
    expect(await kept()).toEqual([]);
  });

  it("[V92] [V95] keeps what came to nothing, with what it may have been", async () => {
    keeper.follow(doubtful, soundOf("nest stab"), () => undefined);
    expect(await kept()).toEqual(["nest stab: nothing"]);
    expect(record.sentences.value[0]?.likely).toContain("next step");
  });

  it("[V92] keeps a sentence that a touch takes back, and none of which no sound was handed out", async () => {
    keeper.follow(said("pause the timer"), soundOf("pause the timer"), () => answer(plain));
    await pass(20);
    answer(undoing);
    keeper.follow(said("next step"), null, () => answer(plain));
    answer(undoing);
    keeper.follow(doubtful, null, () => undefined);
    expect(await kept()).toEqual(["pause the timer: taken-back"]);
  });

  it("[V92] after thirty seconds the sound is let go", async () => {
    keeper.follow(said("pause the timer"), soundOf("pause the timer"), () => answer(plain));
    await pass(31);
    answer(undoing);
    expect(await kept()).toEqual([]);
  });

  it("[V94] a store that refuses is told once, and told anew when it has worked in between", async () => {
    const mumble = async (): Promise<void> => {
      keeper.follow(doubtful, soundOf("nest stab"), () => undefined);
      await kept();
    };
    store.refuse("There is no room.");
    await mumble();
    await mumble();
    expect(remarks).toEqual(["There is no room."]);
    expect(record.trouble.value).toBe("There is no room.");
    store.refuse(null);
    await mumble();
    expect(record.trouble.value).toBeNull();
    store.refuse("There is no room.");
    await mumble();
    expect(remarks).toHaveLength(2);
  });
});
