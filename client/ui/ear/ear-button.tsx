import type { Galley } from "../galley.ts";
import { earWords } from "./ear-words.ts";

/** The round ear with its words; its rim swells with the loudness in the room. */
export function EarButton({ galley }: { readonly galley: Galley }) {
  const { ear, settings } = galley;
  const state = ear.state.value;
  const words = earWords(state, settings.value, ear.room.value);
  const touch = (): void => {
    if (state.kind === "off" || state.kind === "trouble") void ear.start();
    else ear.listenOnce();
  };
  return (
    <button type="button" class="ear-button" aria-label={`${words.now}. ${words.touch}`} onClick={touch}>
      <span class="ear-round" aria-hidden="true">
        <Level galley={galley} />
        <svg viewBox="0 0 48 48" width="40" height="40">
          <path d="M14 21a10 10 0 1 1 20 0c0 7-6 8-6 14a5 5 0 0 1-9 3" />
          <path d="M19 21a5 5 0 0 1 10 0c0 4-4 4-4 8" />
          {(state.kind === "off" || state.kind === "trouble") && <path class="ear-strike" d="M8 8l32 32" />}
        </svg>
      </span>
      <span class="ear-state">{words.now}</span>
    </button>
  );
}

/** Apart, so that a level that moves ten times a second redraws nothing else. */
function Level({ galley }: { readonly galley: Galley }) {
  return <span class="ear-level" style={{ transform: `scale(${0.55 + 0.45 * galley.ear.level.value})` }} />;
}
