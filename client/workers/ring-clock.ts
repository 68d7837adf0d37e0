import { systemClock } from "../sound/clock.ts";
import type { FromRingClock, ToRingClock } from "../sound/ring-clock.ts";
import { ringWatch } from "../sound/ring-watch.ts";

const watch = ringWatch(systemClock, (id, at) => {
  postMessage({ type: "due", id, at } satisfies FromRingClock);
});

addEventListener("message", (event: MessageEvent<ToRingClock>) => {
  const message = event.data;
  if (message.type === "set") watch.set(message.id, message.at);
  else watch.clear(message.id);
});
