import { effect, useSignal } from "@preact/signals";
import type { FunctionComponent } from "preact";
import { useEffect } from "preact/hooks";
import type { Session } from "../../core/cook/session.ts";
import type { ClosingCardProps } from "./closing-card.tsx";
import { CookingPage } from "./cooking-page.tsx";
import type { Galley } from "./galley.ts";
import { useLazy } from "./parts/use-lazy.ts";
import { useLook } from "./use-look.ts";
import { WaitingPage } from "./waiting-page.tsx";

const loadStart = async (): Promise<FunctionComponent<{ readonly galley: Galley }>> =>
  (await import("./start/start-page.tsx")).StartPage;

const loadClosing = async (): Promise<FunctionComponent<ClosingCardProps>> =>
  (await import("./closing-card.tsx")).ClosingCard;

/** The state decides what is shown: nothing known yet, no meal, a meal, a meal that has just ended. */
export function App({ galley }: { readonly galley: Galley }) {
  const { store, settings } = galley;
  const over = useSignal<Session | null>(null);
  const left = useSignal<number | null>(null);
  // Who opens the page in mid-meal does not wait for it; it is there when the meal is over.
  const start = useLazy(loadStart, store.link.value);
  const closing = useLazy(loadClosing, store.link.value);
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
    const leave = (): void => void (left.value = ended.begunAt);
    return closing.state === "here" ? (
      <closing.Inside galley={galley} session={ended} onLeave={leave} />
    ) : (
      <WaitingPage link={store.link.value} />
    );
  }
  if (session !== null && sheet !== null && session.phase.state !== "ended") {
    return <CookingPage galley={galley} session={session} sheet={sheet} />;
  }
  return store.isLoaded.value && start.state === "here" ? (
    <start.Inside galley={galley} />
  ) : (
    <WaitingPage link={start.state === "failed" ? "lost" : store.link.value} />
  );
}
