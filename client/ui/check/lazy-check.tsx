import type { FunctionComponent } from "preact";
import { Sheet } from "../parts/sheet.tsx";
import { useLazy } from "../parts/use-lazy.ts";
import type { CheckProps } from "./check-props.ts";

const load = async (): Promise<FunctionComponent<CheckProps>> =>
  (await import("./ear-check.tsx")).EarCheckPage;

/** The check of the ear; it comes when it is asked for. Put away at any time it has changed nothing. */
export function LazyCheck(props: CheckProps) {
  const loaded = useLazy(load);
  return (
    <Sheet title="Does the kitchen hear you?" kind="wide" onClose={props.onClose}>
      {loaded.state === "loading" && <p role="status">Getting ready.</p>}
      {loaded.state === "failed" && (
        <p role="alert">The check cannot be fetched while the server is away. The ear listens as before.</p>
      )}
      {loaded.state === "here" && <loaded.Inside {...props} />}
    </Sheet>
  );
}
