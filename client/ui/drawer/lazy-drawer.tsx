import type { FunctionComponent } from "preact";
import { Sheet } from "../parts/sheet.tsx";
import { useLazy } from "../parts/use-lazy.ts";
import type { DrawerProps } from "./drawer-props.ts";

const load = async (): Promise<FunctionComponent<DrawerProps>> => (await import("./drawer.tsx")).Drawer;

/** The drawer "Kitchen"; what is in it comes with the first pull, not with the page. */
export function LazyDrawer(props: DrawerProps) {
  const loaded = useLazy(load);
  return (
    <Sheet title="Kitchen" kind="panel" onClose={props.onClose}>
      {loaded.state === "loading" && <p role="status">Opening.</p>}
      {loaded.state === "failed" && (
        <p role="alert">
          The drawer cannot be opened while the server is away. All of it can be said or typed.
        </p>
      )}
      {loaded.state === "here" && <loaded.Inside {...props} />}
    </Sheet>
  );
}
