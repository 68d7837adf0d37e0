import type { FunctionComponent } from "preact";
import { useLazy } from "../parts/use-lazy.ts";
import type { DietProps } from "./diet-props.ts";

const load = async (): Promise<FunctionComponent<DietProps>> =>
  (await import("./diet-on-card.tsx")).DietOnCard;

/** What the diet has against a picked meal; it comes with the first one that is picked. */
export function LazyDiet(props: DietProps) {
  const loaded = useLazy(load);
  if (loaded.state === "here") return <loaded.Inside {...props} />;
  return (
    <p role="status">
      {loaded.state === "loading"
        ? "Reading what your diet says."
        : "What your diet says cannot be shown while the server is away."}
    </p>
  );
}
