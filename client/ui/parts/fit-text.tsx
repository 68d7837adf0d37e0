import { useLayoutEffect, useRef } from "preact/hooks";

interface FitTextProps {
  readonly text: string;
}

/**
 * Steps of size in CSS pixels, for reading at two metres; 48 is the least that still can be. Where helpers' steps leave
 * less room than that takes, small and whole is better than large and cut.
 */
const tabletSizes = [132, 116, 100, 88, 80, 72, 64, 56, 48, 42, 36, 31, 27];
/** A phone is held in the hand. */
const phoneSizes = [48, 42, 38, 34, 30, 27, 24];
/** The shorter side of a screen from which on it stands on the counter. */
const tabletSide = 600;

/** Shows a sentence as large as its box allows, and fits it anew when the box changes. */
export function FitText({ text }: FitTextProps) {
  const box = useRef<HTMLDivElement>(null);
  const words = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => {
    const [outer, inner] = [box.current, words.current];
    if (outer === null || inner === null) return undefined;
    const refit = (): void => fit(outer, inner);
    refit();
    const watch = new ResizeObserver(refit);
    watch.observe(outer);
    return () => watch.disconnect();
  }, [text]);
  return (
    <div class="fit" ref={box}>
      <p class="fit-words" ref={words}>
        {text}
      </p>
    </div>
  );
}

function fit(box: HTMLElement, words: HTMLElement): void {
  const isTablet = Math.min(window.innerWidth, window.innerHeight) >= tabletSide;
  box.style.maxHeight = "";
  for (const size of isTablet ? tabletSizes : phoneSizes) {
    words.style.fontSize = `${size}px`;
    // The letters reach a little below their lines, so that the box's own measure counts as well.
    const isWhole = Math.max(words.offsetHeight, box.scrollHeight) <= box.clientHeight;
    if (isWhole && words.scrollWidth <= box.clientWidth) return;
  }
  // A page that scrolls gives it more room rather than cut it.
  box.style.maxHeight = "none";
}
