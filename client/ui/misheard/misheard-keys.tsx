import { useState } from "preact/hooks";
import { longestKeptS, mostKept, takenBackWithinS } from "../../../core/speech/misheard/limits.ts";
import type { MisheardRecord } from "../../kitchen/misheard-model.ts";
import type { Galley } from "../galley.ts";
import { Choice } from "../parts/choice.tsx";
import { LazyMisheardList } from "./lazy-misheard-list.tsx";
import { sentenceCount } from "./misheard-words.ts";
import { useRecord } from "./use-record.ts";

const ways = [
  ["off", "Keep nothing"],
  ["on", "Keep what is misheard"],
] as const;

/** 16,000 samples a second of two bytes each. */
const mostMegabytes = Math.ceil((mostKept * longestKeptS * 32_000) / 1_000_000);

/** Whether misheard sentences are kept, what that means, and the way to them. */
export function MisheardKeys({ galley }: { readonly galley: Galley }) {
  const { settings, misheard } = galley;
  const { keepMisheard, address } = settings.value;
  const record = useRecord(misheard);
  const [isAsking, setAsking] = useState(false);
  const [isOpen, setOpen] = useState(false);
  const count = typeof record === "string" ? 0 : record.sentences.value.length;
  const choose = (way: "off" | "on"): void => {
    settings.value = { ...settings.value, keepMisheard: way === "on" };
    setAsking(way === "off" && count > 0);
  };
  return (
    <>
      <Choice
        name="Misheard sentences"
        options={ways}
        value={keepMisheard ? "on" : "off"}
        onChoose={choose}
      />
      <p class="hint">
        Turned on, it keeps the sound of sentences that came to nothing after “{address}”, that were asked
        back, or that you undid or said no to within {takenBackWithinS} seconds, with whoever else is heard in
        them. It stays in this browser on this device and is never sent anywhere: at most {mostKept} sentences
        of {longestKeptS} seconds ({mostMegabytes} MB), the oldest go first. You can listen to them, correct
        and delete them here.
      </p>
      <Trouble record={record} />
      {typeof record !== "string" && isAsking && count > 0 && (
        <LeftOver record={record} onAnswer={() => setAsking(false)} />
      )}
      {count > 0 && !isAsking && (
        <button type="button" class="key key-small misheard-open" onClick={() => setOpen(true)}>
          Listen to {sentenceCount(count)}
        </button>
      )}
      {typeof record !== "string" && isOpen && (
        <LazyMisheardList record={record} clock={galley.clock} onClose={() => setOpen(false)} />
      )}
    </>
  );
}

function Trouble({ record }: { readonly record: ReturnType<typeof useRecord> }) {
  if (record === "opening") return null;
  const sentence =
    record === "failed"
      ? "The misheard sentences cannot be read while the server is away."
      : record.trouble.value;
  return sentence === null ? null : <p role="alert">{sentence}</p>;
}

interface LeftOverProps {
  readonly record: MisheardRecord;
  readonly onAnswer: () => void;
}

/** What is there when nothing more is to be kept. */
function LeftOver({ record, onAnswer }: LeftOverProps) {
  const count = record.sentences.value.length;
  const removeAll = (): void => {
    void record.remove(null).then(onAnswer);
  };
  return (
    <div class="misheard-ask" role="group" aria-label="What was kept so far">
      <p role="status">Nothing more is kept. Delete what is there, {sentenceCount(count)}?</p>
      <div class="choice">
        <button type="button" class="key key-small key-danger" onClick={removeAll}>
          Yes, delete them
        </button>
        <button type="button" class="key key-small" onClick={onAnswer}>
          No, leave them here
        </button>
      </div>
    </div>
  );
}
