import type { ReadonlySignal } from "@preact/signals";

/** The bar begins at this level; at its other end is full scale. */
const leastDb = -80;

/** Where a level lies on the bar: 0 to 1. */
const shareOf = (dbfs: number): number => Math.min(1, Math.max(0, 1 - dbfs / leastDb));

interface LiveBarProps {
  readonly voice: ReadonlySignal<number>;
  readonly room: ReadonlySignal<number>;
}

/** What comes in now against what never stops in the room: to be seen only, its words stand elsewhere. */
export function LiveBar({ voice, room }: LiveBarProps) {
  return (
    <div class="level" aria-hidden="true">
      <span class="level-name">You</span>
      <Bar share={shareOf(voice.value)} kind="voice" />
      <span class="level-name">The room</span>
      <Bar share={shareOf(room.value)} kind="room" />
    </div>
  );
}

interface MeasuredBarProps {
  readonly name: string;
  readonly dbfs: number;
  readonly kind: "voice" | "room";
}

/** A level that was measured, with its figure. */
export function MeasuredBar({ name, dbfs, kind }: MeasuredBarProps) {
  return (
    <>
      <dt>{name}</dt>
      <dd>
        <Bar share={shareOf(dbfs)} kind={kind} />
        <span class="level-figure">{`${String(Math.round(dbfs)).replace("-", "−")} dBFS`}</span>
      </dd>
    </>
  );
}

function Bar({ share, kind }: { readonly share: number; readonly kind: "voice" | "room" }) {
  return (
    <span class={`level-bar level-${kind}`} aria-hidden="true">
      <span class="level-fill" style={{ width: `${share * 100}%` }} />
    </span>
  );
}
