import { render } from "preact";
import { useEffect, useRef } from "preact/hooks";
import type { ListAtHand } from "../../../core/shop/at-hand.ts";
import { ListPaper, type ListSetting } from "./list-paper.tsx";

/** From what is easiest to read to what holds the most; smaller letters than seven points are not set. */
const settings: readonly ListSetting[] = [
  ...[13, 12, 11, 10, 9].map((points) => ({ points, columns: 2 })),
  ...[9, 8.5, 8, 7.5, 7].map((points) => ({ points, columns: 3 })),
];

/** While it is looked at, whatever is printed is the list: set up as the browser begins to print, taken away afterwards. */
export function useListPaper(hand: ListAtHand | null): void {
  const latest = useRef(hand);
  latest.current = hand;
  useEffect(() => {
    const paper = document.createElement("section");
    const lay = (): void => {
      if (latest.current === null) return;
      paper.className = "paper list-paper";
      document.body.append(paper);
      layOut(paper, latest.current);
    };
    const away = (): void => {
      render(null, paper);
      paper.remove();
    };
    window.addEventListener("beforeprint", lay);
    window.addEventListener("afterprint", away);
    return () => {
      window.removeEventListener("beforeprint", lay);
      window.removeEventListener("afterprint", away);
      away();
    };
  }, []);
}

/** In the largest letters with which all of it stands on the page. */
function layOut(paper: HTMLElement, hand: ListAtHand): void {
  for (const setting of settings) {
    render(<ListPaper hand={hand} setting={setting} />, paper);
    const list = paper.querySelector(".list-places");
    const isWhole =
      list === null ||
      (list.scrollWidth <= list.clientWidth + 1 && list.scrollHeight <= list.clientHeight + 1);
    if (isWhole) return;
  }
  // More than a page holds: nothing may be cut off, so it goes on on the next one.
  paper.classList.add("is-long");
}
