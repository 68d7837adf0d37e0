import type { FunctionComponent } from "preact";
import { Sheet } from "../parts/sheet.tsx";
import { useLazy } from "../parts/use-lazy.ts";
import type { WantedValuesProps } from "./values-props.ts";

const load = async (): Promise<FunctionComponent<WantedValuesProps>> =>
  (await import("./wanted-values.tsx")).WantedValues;

/** What is in a meal, laid over the start page; its code comes with the first look. */
export function ValuesDoor(props: WantedValuesProps & { readonly onClose: () => void }) {
  const loaded = useLazy(load, props.galley.store.link.value);
  return (
    <Sheet title="What is in it" kind="card" onClose={props.onClose}>
      {loaded.state === "here" ? (
        <loaded.Inside galley={props.galley} wanted={props.wanted} />
      ) : (
        <p role="status">
          {loaded.state === "loading" ? "Opening." : "What is in it cannot be told while the server is away."}
        </p>
      )}
    </Sheet>
  );
}
