import type { HeldLimit } from "../../../core/diet/held-limits.ts";

/** What is said without words. */
export const limitMark = { kept: "✓", broken: "✕", "cannot tell": "?", open: "…" } as const;

const heads = {
  kept: "Kept",
  broken: "Not kept",
  "cannot tell": "Cannot tell",
  open: "Until the day is over",
} as const;

/** A limit of a diet beside the value that it limits: by mark, by word, and by colour last. */
export function LimitLine({ limit: { state, limit, why } }: { readonly limit: HeldLimit }) {
  return (
    <span class={`value-limit is-${state.replace(" ", "-")}`}>
      <b aria-hidden="true">{limitMark[state]}</b>
      <span>
        <b>{heads[state]}:</b> {limit}.{why.length > 0 && ` ${why.join(" ")}`}
      </span>
    </span>
  );
}
