import type { DietAnswer } from "../../../core/sync/protocol.ts";

const marks = { allowed: "✓", "cannot tell": "?", "not allowed": "✕" } as const;

const things = (count: number): string => (count === 1 ? "one thing" : `${count} things`);

function words({ verdict, findings, problem }: DietAnswer): string {
  if (problem !== null) return "your diet cannot be read";
  const broken = findings.filter((one) => one.verdict === "not allowed").length;
  const unsure = findings.length - broken;
  switch (verdict) {
    case "allowed":
      return "allowed by your diet";
    case "not allowed":
      return `your diet does not allow ${things(broken)}`;
    case "cannot tell":
      return `cannot tell whether your diet allows ${things(unsure)}`;
  }
}

/** What the diet says of a meal, in a line of the card. */
export function DietLine({ diet }: { readonly diet: DietAnswer }) {
  return (
    <span class={`meal-diet is-${diet.verdict.replace(" ", "-")}`}>
      <b aria-hidden="true">{marks[diet.verdict]}</b> <span>{words(diet)}</span>
    </span>
  );
}
