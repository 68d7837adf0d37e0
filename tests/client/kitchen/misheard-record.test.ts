import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createMisheardRecord } from "../../../client/kitchen/misheard-record.ts";
import type { Misheard } from "../../../core/speech/misheard/misheard.ts";
import { parseWav } from "../../../core/speech/wav.ts";
import { instant } from "../../../core/units/quantity.ts";
import { grammarOf } from "../../voice/grammars.ts";
import { memoryMisheardStore } from "./memory-misheard-store.ts";

const row = (id: string, at: number): Misheard => ({
  id,
  at: instant(at),
  heard: id,
  cameTo: "nothing",
  likely: [],
  meant: null,
});

/** A record of two sentences, and a loudspeaker that is ended by hand. */
function opened() {
  const store = memoryMisheardStore([row("b", 2_000), row("a", 1_000)], new Uint8Array([1, 2, 3]));
  const deaf = signal(false);
  const played: { readonly bytes: number; readonly end: (trouble: string | null) => void }[] = [];
  let stopped = 0;
  const record = createMisheardRecord({
    store,
    deaf,
    playRecording: (wav, onEnd) => {
      played.push({ bytes: wav.length, end: onEnd });
      return {
        stop: () => {
          stopped += 1;
          onEnd(null);
        },
      };
    },
    newId: () => "new",
  });
  return { store, deaf, played, record, stopped: () => stopped };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("the record", () => {
  it("[V93] keeps a sentence as a WAV file of 16 bits at 16 kHz", async () => {
    const { record, store } = opened();
    const samples = Float32Array.from({ length: 480 }, (_, at) => Math.sin(at / 9) / 2);
    const sentence = {
      at: instant(9_000),
      samples,
      heard: "nest stab",
      rivals: [],
      grammar: grammarOf("next step"),
    };
    expect(await record.keep({ sentence, cameTo: "nothing" })).toBeNull();
    expect(record.sentences.value.map(({ id }) => id)).toEqual(["new", "b", "a"]);
    const sound = await store.sound("new");
    const wav = parseWav(sound.ok ? sound.value : new Uint8Array());
    expect(wav.ok && [wav.value.rate, wav.value.samples.length]).toEqual([16_000, 480]);
    samples.forEach((sample, at) => expect(wav.ok ? wav.value.samples[at] : null).toBeCloseTo(sample, 3));
  });

  it("[V98] the ear is deaf from before the first sound until the last has died away", async () => {
    const { record, deaf, played } = opened();
    await record.refresh();
    await record.play("a");
    expect([deaf.value, record.playing.value, played[0]?.bytes]).toEqual([true, "a", 3]);
    played[0]?.end(null);
    expect([deaf.value, record.playing.value]).toEqual([true, null]);
    await vi.advanceTimersByTimeAsync(500);
    expect(deaf.value).toBe(true);
    await vi.advanceTimersByTimeAsync(200);
    expect(deaf.value).toBe(false);
  });

  it("[V98] another sentence takes the place of the one that plays, and the ear stays deaf", async () => {
    const { record, deaf, played, stopped } = opened();
    await record.refresh();
    await record.play("a");
    await record.play("b");
    expect([stopped(), record.playing.value, played.length]).toEqual([1, "b", 2]);
    await vi.advanceTimersByTimeAsync(5_000);
    expect(deaf.value).toBe(true);
    await record.remove("b");
    await vi.advanceTimersByTimeAsync(700);
    expect([deaf.value, record.playing.value, stopped()]).toEqual([false, null, 2]);
  });

  it("[V94] what cannot be played, changed, deleted or saved is one sentence, and the list stays", async () => {
    const { record, store, deaf, played } = opened();
    await record.refresh();
    await record.play("a");
    played[0]?.end("It cannot be played.");
    expect(record.trouble.value).toBe("It cannot be played.");
    store.refuse("It is closed.");
    for (const attempt of [
      () => record.play("a"),
      () => record.correct("a", "next step"),
      () => record.remove(null),
      () => record.file(),
      () => record.refresh(),
    ]) {
      await attempt();
      expect(record.trouble.value).toBe("It is closed.");
      expect(record.sentences.value).toHaveLength(2);
    }
    await vi.advanceTimersByTimeAsync(1_000);
    expect(deaf.value).toBe(false);
  });

  it("[V97] saves nothing where there is nothing", async () => {
    const { record } = opened();
    await record.remove(null);
    expect(await record.file()).toBeNull();
  });
});
