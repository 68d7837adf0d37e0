import { signal } from "@preact/signals";
import type { Signal } from "@preact/signals";
import { likelyInstead } from "../../core/speech/misheard/likely-sentences.ts";
import type { Misheard } from "../../core/speech/misheard/misheard.ts";
import { recordFile, type WithSound } from "../../core/speech/misheard/record-file.ts";
import { listeningRate } from "../../core/speech/samples.ts";
import { toWav } from "../../core/sound/wav-file.ts";
import type { Result } from "../../core/units/result.ts";
import type { Playing, playRecording } from "../sound/play-recording.ts";
import type { MisheardStore } from "../storage/misheard-store.ts";
import type { MisheardRecord } from "./misheard-model.ts";

/** What the record is joined to. */
export interface RecordNeeds {
  readonly store: MisheardStore;
  readonly playRecording: typeof playRecording;
  /** True while a sentence is played, and until it has died away in the room: the ear must not hear it. */
  readonly deaf: Signal<boolean>;
  readonly newId: () => string;
}

/** How long the ear stays deaf after the last sound, in ms: the way out to the speaker, through the room and back in. */
const dyingAwayMs = 600;

/** Opens the record; what is in it is read with `refresh`. */
export function createMisheardRecord(needs: RecordNeeds): MisheardRecord {
  return new BrowserRecord(needs);
}

class BrowserRecord implements MisheardRecord {
  readonly sentences = signal<readonly Misheard[]>([]);
  readonly trouble = signal<string | null>(null);
  readonly playing = signal<string | null>(null);
  private readonly needs: RecordNeeds;
  private sounding: Playing | null = null;
  private hearsAgain: ReturnType<typeof setTimeout> | undefined;

  constructor(needs: RecordNeeds) {
    this.needs = needs;
  }

  readonly refresh: MisheardRecord["refresh"] = async () => {
    const listed = await this.needs.store.list();
    this.told(listed);
    if (listed.ok) this.sentences.value = listed.value.toReversed();
  };

  readonly keep: MisheardRecord["keep"] = async ({ sentence, cameTo }) => {
    const { store, newId } = this.needs;
    const { at, heard } = sentence;
    const misheard = { id: newId(), at, heard, cameTo, likely: likelyInstead(sentence), meant: null };
    const added = await store.add(misheard, toWav(sentence.samples, listeningRate));
    await this.refresh();
    this.told(added);
    return added.ok ? null : added.error;
  };

  readonly play: MisheardRecord["play"] = async (id) => {
    this.stop();
    const sound = await this.needs.store.sound(id);
    this.told(sound);
    if (!sound.ok) return;
    // Another may have been touched while this one was read.
    this.stop();
    clearTimeout(this.hearsAgain);
    this.needs.deaf.value = true;
    this.playing.value = id;
    this.sounding = this.needs.playRecording(new Uint8Array(sound.value), (trouble) => {
      this.playing.value = null;
      this.sounding = null;
      this.trouble.value = trouble;
      this.hearsAgain = setTimeout(() => {
        this.needs.deaf.value = false;
      }, dyingAwayMs);
    });
  };

  readonly stop: MisheardRecord["stop"] = () => this.sounding?.stop();

  readonly correct: MisheardRecord["correct"] = async (id, meant) => {
    const misheard = this.sentences.value.find((one) => one.id === id);
    if (misheard === undefined) return;
    const changed = await this.needs.store.change({ ...misheard, meant });
    await this.refresh();
    this.told(changed);
  };

  readonly remove: MisheardRecord["remove"] = async (id) => {
    if (id === null || id === this.playing.value) this.stop();
    const removed = await this.needs.store.remove(id);
    await this.refresh();
    this.told(removed);
  };

  readonly file: MisheardRecord["file"] = async () => {
    await this.refresh();
    const all: WithSound[] = [];
    for (const misheard of this.sentences.value) {
      const wav = await this.needs.store.sound(misheard.id);
      // One sentence without its sound is no reason to keep the others back.
      if (wav.ok) all.push({ misheard, wav: wav.value });
      else this.trouble.value = wav.error;
    }
    return all.length === 0 ? null : new Uint8Array(recordFile(all));
  };

  private told(result: Result<unknown, string>): void {
    this.trouble.value = result.ok ? null : result.error;
  }
}
