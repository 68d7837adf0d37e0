import { useState } from "preact/hooks";
import { suggestions } from "../../../core/talk/suggestions.ts";
import type { Line } from "../../kitchen/caller.ts";
import type { Galley } from "../galley.ts";
import { EarButton } from "./ear-button.tsx";
import { ModelBar } from "./model-bar.tsx";
import { NoiseSign } from "./noise-sign.tsx";
import { TypeLine } from "./type-line.tsx";

interface EarLineProps {
  readonly galley: Galley;
  /** Begins a check of the ear; null: not from here. */
  readonly onCheck: (() => void) | null;
}

/** Whether the kitchen listens, what it heard and understood, and what the caller said last. */
export function EarLine({ galley, onCheck }: EarLineProps) {
  const { caller, ear, store, clock, settings } = galley;
  const [isTyping, setTyping] = useState(false);
  const state = ear.state.value;
  const noise = ear.room.value;
  const lines = caller.lines.value;
  const said = lines.findLast((line) => line.who === "caller");
  const heard = lines.findLast((line) => line.who === "cook");
  const kitchen = {
    log: store.log.value,
    sheet: store.sheet.value,
    now: clock.now.value,
    utcOffsetMinutes: clock.utcOffsetMinutes,
    dialogue: caller.dialogue.value,
    utteranceId: "suggestions",
    explain: null,
    household: galley.house.value?.household.value ?? null,
    foods: null,
  };
  return (
    <footer class={`ear ear-${state.kind} ear-room-${noise}`}>
      <EarButton galley={galley} />
      <div class="ear-talk">
        <p class={`ear-said ${said?.how ?? ""}`} aria-live="polite">
          {state.sentence ?? said?.text ?? "What I say is written here."}
        </p>
        <p class="ear-heard">
          {state.loading !== null ? (
            <ModelBar loading={state.loading} />
          ) : ear.partial.value !== "" ? (
            <i>{ear.partial.value} …</i>
          ) : (
            <Heard line={heard} />
          )}
          {settings.value.keepMisheard && <span class="ear-keeps">keeps what is misheard</span>}
        </p>
      </div>
      <div class={isTyping ? "ear-more ear-typing" : "ear-more"}>
        <NoiseSign noise={noise} />
        {isTyping ? (
          <TypeLine onSay={caller.hearTyped} onClose={() => setTyping(false)} />
        ) : (
          <>
            {noise === "too-loud" && onCheck !== null ? (
              <button type="button" class="key key-small check-ear" onClick={onCheck}>
                Check the ear
              </button>
            ) : (
              <Sayings texts={suggestions(kitchen).slice(0, 3)} onSay={caller.hearTyped} />
            )}
            <button type="button" class="key key-small" onClick={() => setTyping(true)}>
              Type
            </button>
          </>
        )}
      </div>
    </footer>
  );
}

interface SayingsProps {
  readonly texts: readonly string[];
  readonly onSay: (text: string) => void;
}

/** What can be said now; a touch says it. */
function Sayings({ texts, onSay }: SayingsProps) {
  return (
    <ul class="sayings" aria-label="You can say">
      {texts.map((text) => (
        <li key={text}>
          <button type="button" class="saying" onClick={() => onSay(text)}>
            “{text}”
          </button>
        </li>
      ))}
    </ul>
  );
}

function Heard({ line }: { readonly line: Line | undefined }) {
  if (line === undefined) return <span>Nothing heard yet.</span>;
  const how = { voice: "Heard", typed: "Typed", touch: "Touched", answer: "", unasked: "" }[line.how];
  return (
    <>
      <span class="heard-words">
        {how} <q>{line.text}</q>
      </span>
      {line.understood === null ? (
        <b class="not-understood">not understood</b>
      ) : (
        <span class="understood">→ {line.understood}</span>
      )}
    </>
  );
}
