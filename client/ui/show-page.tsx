import { render } from "preact";
import { App } from "./app.tsx";
import type { Galley } from "./galley.ts";

/** Puts the page on the screen. */
export function showPage(galley: Galley, root: Element): void {
  render(<App galley={galley} />, root);
}
