import type { FunctionComponent } from "preact";
import { useState } from "preact/hooks";
import { useLazy } from "../parts/use-lazy.ts";
import type { EveningInsideProps, EveningProps } from "./evening-props.ts";

const load = async (): Promise<FunctionComponent<EveningInsideProps>> =>
  (await import("./evening-inside.tsx")).EveningInside;

/** The evening at a glance; a touch lays it out large. Its pictures come after the page. */
export function EveningBand(props: EveningProps) {
  const [isOpen, setOpen] = useState(false);
  const loaded = useLazy(load);
  return (
    <section class="evening" aria-labelledby="evening-title">
      <h2 id="evening-title" class="unseen">
        The evening
      </h2>
      <div class="evening-face">
        {loaded.state === "failed" && (
          <p class="hint">The evening cannot be drawn while the server is away. Ask what is left.</p>
        )}
        {loaded.state === "here" && (
          <loaded.Inside {...props} isOpen={isOpen} onClose={() => setOpen(false)} />
        )}
        <button
          type="button"
          class="evening-open"
          aria-label="Lay the whole evening out"
          onClick={() => setOpen(true)}
        />
      </div>
    </section>
  );
}
