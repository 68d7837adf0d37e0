import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { RefObject } from "preact";

/** The inner width of an element in CSS pixels, kept up to date; 0 before it is on the page. */
export function useWidth<E extends HTMLElement>(): readonly [RefObject<E | null>, number] {
  const element = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const measured = element.current;
    if (measured === null) return undefined;
    const read = (): void => setWidth(measured.clientWidth);
    read();
    const watch = new ResizeObserver(read);
    watch.observe(measured);
    return () => watch.disconnect();
  }, []);
  return [element, width];
}
