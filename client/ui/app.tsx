import { effect, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Session } from "../../core/cook/session.ts";
import { ClosingCard } from "./closing-card.tsx";
import { CookingPage } from "./cooking-page.tsx";
import type { Galley } from "./galley.ts";
import { StartPage } from "./start/start-page.tsx";
import { useLook } from "./use-look.ts";
import { WaitingPage } from "./waiting-page.tsx";

/** The state decides what is shown: nothing known yet, no meal, a meal, a meal that has just ended. */
export function App({ galley }: { readonly galley: Galley }) {
  const { store, settings } = galley;
  const over = useSignal<Session | null>(null);
  const left = useSignal<number | null>(null);
  useLook(settings);
  // The server forgets an evening in the same breath in which it ends: a hook that waits for the next frame, as
  // useSignalEffect does, would miss the end on every page but the one where it was ordered.
  useEffect(
    () =>
      effect(() => {
        const session = store.session.value;
        if (session !== null) over.value = session.phase.state === "ended" ? session : null;
      }),
    [store, over],
  );
  const session = store.session.value;
  const sheet = store.sheet.value;
  const ended = over.value;
  if (ended !== null && left.value !== ended.begunAt) {
    return <ClosingCard session={ended} onLeave={() => (left.value = ended.begunAt)} />;
  }
  if (session !== null && sheet !== null && session.phase.state !== "ended") {
    return <CookingPage galley={galley} session={session} sheet={sheet} />;
  }
  return store.isLoaded.value ? <StartPage galley={galley} /> : <WaitingPage link={store.link.value} />;
}
