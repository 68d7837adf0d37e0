import { helpers } from "../../../core/plan/worker.ts";
import { Counter } from "./counter.tsx";

interface CooksCounterProps {
  /** From 1. */
  readonly cooks: number;
  readonly onChange: (cooks: number) => void;
}

/** How many cook together; as many as the caller can call for. */
export function CooksCounter({ cooks, onChange }: CooksCounterProps) {
  return (
    <Counter
      name="Who cooks"
      value={cooks === 1 ? "you alone" : `${cooks} of you`}
      onLess={cooks === 1 ? null : () => onChange(cooks - 1)}
      onMore={cooks > helpers.length ? null : () => onChange(cooks + 1)}
    />
  );
}
