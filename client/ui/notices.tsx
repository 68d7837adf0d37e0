import { numberWords } from "../../core/units/number-words.ts";
import type { Galley } from "./galley.ts";

/** What the cook has to know about this page itself: the server's absence, a screen that may go dark. */
export function Notices({ galley }: { readonly galley: Galley }) {
  const { store, awake } = galley;
  const count = store.waiting.value;
  const things = count === 1 ? "one thing waits" : `${numberWords(count)} things wait`;
  const away =
    store.link.value !== "lost"
      ? null
      : `The server is away. Cooking goes on here${count === 0 ? "." : `; ${things} for it.`}`;
  return (
    <div class="notices" role="status">
      {away !== null && <p class="notice notice-away">{away}</p>}
      {awake.value !== null && <p class="notice">{awake.value}</p>}
    </div>
  );
}
