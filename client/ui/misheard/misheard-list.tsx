import { useRef, useState } from "preact/hooks";
import { tallyOf, tallyWords } from "../../../core/speech/misheard/tally.ts";
import { saveFile } from "../../kitchen/save-file.ts";
import { clockTime } from "../galley.ts";
import type { ListProps } from "./list-props.ts";
import { MisheardItem } from "./misheard-item.tsx";
import { daysBefore, sentenceCount, whenWords } from "./misheard-words.ts";

/** More rows than these say nothing that the first did not. */
const mostTallies = 5;

/** What was misheard: how often, and each sentence to listen to, to correct and to delete. */
export function MisheardList({ record, clock }: ListProps) {
  const list = useRef<HTMLOListElement>(null);
  const sentences = record.sentences.value;
  const offset = clock.utcOffsetMinutes(clock.now.value);
  const open = sentences.filter(({ meant }) => meant === null).length;
  const remove = (id: string | null): void => {
    // What had the focus is gone: it stays in the list.
    void record.remove(id).then(() => list.current?.focus());
  };
  return (
    <div class="misheard">
      {record.trouble.value !== null && <p role="alert">{record.trouble.value}</p>}
      <ul class="misheard-tally" aria-label="How often">
        {tallyOf(sentences)
          .slice(0, mostTallies)
          .map((tally) => (
            <li key={tally.sentence}>{tallyWords(tally)}</li>
          ))}
        <li class="hint">{openWords(sentences.length, open)}</li>
      </ul>
      <ol class="misheard-list" ref={list} tabIndex={-1} aria-label="Sentences, the newest first">
        {sentences.map((one) => (
          <MisheardItem
            key={one.id}
            misheard={one}
            when={whenWords(clockTime(one.at, clock), daysBefore(one.at, clock.now.value, offset))}
            isPlaying={record.playing.value === one.id}
            onPlay={() => void record.play(one.id)}
            onStop={record.stop}
            onCorrect={(meant) => void record.correct(one.id, meant)}
            onDelete={() => remove(one.id)}
          />
        ))}
      </ol>
      {sentences.length > 0 && <WholeRecord record={record} onDeleteAll={() => remove(null)} />}
    </div>
  );
}

function openWords(all: number, open: number): string {
  if (all === 0) return "Nothing is kept.";
  return open === 0 ? "Each one is corrected." : `Not corrected yet: ${sentenceCount(open)}.`;
}

interface WholeProps extends Pick<ListProps, "record"> {
  readonly onDeleteAll: () => void;
}

/** What is done with all of them at once. */
function WholeRecord({ record, onDeleteAll }: WholeProps) {
  const [isAsking, setAsking] = useState(false);
  const save = async (): Promise<void> => {
    const file = await record.file();
    if (file !== null) saveFile(file, "misheard-sentences.zip", "application/zip");
  };
  if (isAsking) {
    return (
      <div class="misheard-ask" role="group" aria-label="All of them">
        <p role="status">Delete {sentenceCount(record.sentences.value.length)} for good?</p>
        <div class="choice">
          <button type="button" class="key key-danger" onClick={onDeleteAll}>
            Yes, delete them
          </button>
          <button type="button" class="key" onClick={() => setAsking(false)}>
            No, leave them here
          </button>
        </div>
      </div>
    );
  }
  return (
    <div class="choice misheard-whole">
      <button type="button" class="key" onClick={() => void save()}>
        Save all as one file
      </button>
      <button type="button" class="key key-danger" onClick={() => setAsking(true)}>
        Delete all
      </button>
    </div>
  );
}
