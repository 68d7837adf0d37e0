import type { FunctionComponent } from "preact";
import { Sheet } from "../parts/sheet.tsx";
import { useLazy } from "../parts/use-lazy.ts";
import type { ListProps } from "./list-props.ts";

interface LazyListProps extends ListProps {
  readonly onClose: () => void;
}

const load = async (): Promise<FunctionComponent<ListProps>> =>
  (await import("./misheard-list.tsx")).MisheardList;

/** The list, laid over the page; its code comes when it is first looked at. */
export function LazyMisheardList({ onClose, ...props }: LazyListProps) {
  const loaded = useLazy(load);
  const close = (): void => {
    props.record.stop();
    onClose();
  };
  return (
    <Sheet title="Misheard sentences" kind="wide" onClose={close}>
      {loaded.state === "loading" && <p role="status">Opening.</p>}
      {loaded.state === "failed" && <p role="alert">The list cannot be opened while the server is away.</p>}
      {loaded.state === "here" && <loaded.Inside {...props} />}
    </Sheet>
  );
}
