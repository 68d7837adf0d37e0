import { useEffect, useState } from "preact/hooks";
import type { FunctionComponent } from "preact";

/** What comes when it is wanted, and not with the page. */
export type Lazy<P> =
  | { readonly state: "loading" }
  | { readonly state: "failed" }
  | { readonly state: "here"; readonly Inside: FunctionComponent<P> };

/**
 * Fetches a component once.
 * @param load the same function at every call
 * @param occasion tried again whenever this becomes another; what is here already stays
 */
export function useLazy<P>(load: () => Promise<FunctionComponent<P>>, occasion = ""): Lazy<P> {
  const [loaded, setLoaded] = useState<Lazy<P>>({ state: "loading" });
  useEffect(() => {
    let isOpen = true;
    load().then(
      (Inside) => isOpen && setLoaded({ state: "here", Inside }),
      () => isOpen && setLoaded({ state: "failed" }),
    );
    return () => {
      isOpen = false;
    };
  }, [load, occasion]);
  return loaded;
}
