import { useEffect, useState } from "preact/hooks";
import type { FunctionComponent } from "preact";
import { Sheet } from "../parts/sheet.tsx";
import type { DrawerProps } from "./drawer-props.ts";

type Loaded =
  | { readonly state: "loading" }
  | { readonly state: "failed" }
  | { readonly state: "here"; readonly Inside: FunctionComponent<DrawerProps> };

/** The drawer "Kitchen"; what is in it comes with the first pull, not with the page. */
export function LazyDrawer(props: DrawerProps) {
  const [loaded, setLoaded] = useState<Loaded>({ state: "loading" });
  useEffect(() => {
    let isOpen = true;
    import("./drawer.tsx").then(
      ({ Drawer }) => isOpen && setLoaded({ state: "here", Inside: Drawer }),
      () => isOpen && setLoaded({ state: "failed" }),
    );
    return () => {
      isOpen = false;
    };
  }, []);
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
