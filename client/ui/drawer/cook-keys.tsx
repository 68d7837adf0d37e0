import type { Session } from "../../../core/cook/session.ts";
import { CooksCounter } from "../parts/cooks-counter.tsx";
import type { OnDeed } from "../parts/deed.ts";

interface CookKeysProps {
  readonly session: Session;
  readonly onDeed: OnDeed;
}

/** Somebody comes to help, or whoever came last leaves. */
export function CookKeys({ session, onDeed }: CookKeysProps) {
  const { helpers } = session;
  const last = helpers.at(-1)?.helper ?? null;
  const change = (cooks: number): void => {
    if (cooks > 1 + helpers.length)
      onDeed({ label: "One more", intent: { type: "HelperComes" }, words: "someone is helping me" });
    else if (last !== null)
      onDeed({
        label: "One less",
        intent: { type: "HelperGoes", helper: last },
        words: `the ${last} has left`,
      });
  };
  return (
    <>
      <div class="choices">
        <CooksCounter cooks={1 + helpers.length} onChange={change} />
      </div>
      <p>
        {last === null
          ? "Who helps gets steps of their own, called by name."
          : `Who helps says "helper done" after each step.`}
      </p>
    </>
  );
}
