import type { Signal } from "@preact/signals";
import type { MisheardRecord } from "./misheard-model.ts";
import { onceUnlessFailed } from "./once-unless-failed.ts";

/** The record of this browser, one however often it is asked for; nothing of it is fetched before. */
export function lazyMisheardRecord(deaf: Signal<boolean>): () => Promise<MisheardRecord> {
  return onceUnlessFailed(async () => {
    const [{ createMisheardRecord }, { browserMisheardStore }, { playRecording }] = await Promise.all([
      import("./misheard-record.ts"),
      import("../storage/misheard-store.ts"),
      import("../sound/play-recording.ts"),
    ]);
    const newId = (): string => crypto.randomUUID();
    return createMisheardRecord({ store: browserMisheardStore(), playRecording, deaf, newId });
  });
}
