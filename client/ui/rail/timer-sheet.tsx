import { useState } from "preact/hooks";
import type { Timer } from "../../../core/cook/session.ts";
import { mention } from "../../../core/talk/intent.ts";
import type { Intent, Mention } from "../../../core/talk/intent.ts";
import { capital } from "../../../core/units/capital.ts";
import { spokenDuration } from "../../../core/units/duration.ts";
import { minutes } from "../../../core/units/quantity.ts";
import type { Deed, OnDeed } from "../parts/deed.ts";
import { Sheet } from "../parts/sheet.tsx";

interface TimerSheetProps {
  readonly timer: Timer;
  readonly onDeed: OnDeed;
  readonly onClose: () => void;
}

/** All that can be done with one timer. */
export function TimerSheet({ timer, onDeed, onClose }: TimerSheetProps) {
  const [name, setName] = useState(timer.name);
  const by = { by: "timer", timer: timer.id } as const;
  const act = (deed: Deed): void => {
    onDeed(deed);
    onClose();
  };
  const key = (deed: Deed, kind = "") => (
    <button key={deed.label} type="button" class={`key ${kind}`} onClick={() => act(deed)}>
      {deed.label}
    </button>
  );
  return (
    <Sheet title={capital(timer.name)} kind="card" onClose={onClose}>
      <div class="length-keys">{moreTime(by, timer).map((deed) => key(deed, "key-length"))}</div>
      <div class="deed-keys">{plainDeeds(by, timer).map((deed) => key(deed))}</div>
      <form
        class="field field-row"
        onSubmit={(event) => {
          event.preventDefault();
          act({
            label: "Rename",
            intent: { type: "RenameTimer", timer: by, name: mention(name.trim()) },
            words: `call it ${name.trim()}`,
          });
        }}
      >
        <label>
          <span>Its name</span>
          <input
            type="text"
            maxLength={40}
            required
            value={name}
            autocomplete="off"
            onInput={(event) => setName(event.currentTarget.value)}
          />
        </label>
        <button type="submit" class="key">
          Rename
        </button>
      </form>
    </Sheet>
  );
}

function moreTime(timer: Mention, { name }: Timer): readonly Deed[] {
  const change = (count: number): Deed => {
    const by = minutes(Math.abs(count));
    const type = count > 0 ? "Lengthen" : "Shorten";
    return {
      label: `${count > 0 ? "+" : "−"}${Math.abs(count)} min`,
      intent: { type, timer, by },
      words: `${spokenDuration(by)} ${count > 0 ? "more" : "less"} for ${name}`,
    };
  };
  return [-1, 1, 2, 5].map(change);
}

function plainDeeds(timer: Mention, { name, run }: Timer): readonly Deed[] {
  const deed = (
    label: string,
    type: Extract<Intent, { readonly timer: Mention | null }>["type"] & `${string}Timer`,
  ): Deed => ({
    label,
    intent: { type, timer } as Intent,
    words: `${label.toLowerCase()}: ${name}`,
  });
  return [
    run.state === "paused" ? deed("Let it run", "ResumeTimer") : deed("Pause it", "PauseTimer"),
    deed("From the start", "RestartTimer"),
    deed("Stop it", "StopTimer"),
    deed("Cancel it", "CancelTimer"),
  ];
}
