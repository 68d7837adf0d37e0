import type { Use } from "../network.ts";

/** The same uses of one act as spans that do not overlap, so that what an act takes at a moment is one number. */
export function smoothUses(uses: readonly Use[]): readonly Use[] {
  const taken = uses.filter((use) => use.amount > 0 && use.to > use.from);
  return [...new Set(taken.map((use) => use.thing))].flatMap((thing) => {
    const own = taken.filter((use) => use.thing === thing);
    const edges = [...new Set(own.flatMap((use) => [use.from, use.to]))].sort((a, b) => a - b);
    const spans: Use[] = [];
    edges.slice(1).forEach((to, index) => {
      const from = edges[index] ?? to;
      const amount = own.reduce((sum, use) => (use.from <= from && use.to >= to ? sum + use.amount : sum), 0);
      const before = spans.at(-1);
      if (amount === 0) return;
      if (before?.to === from && before.amount === amount) spans[spans.length - 1] = { ...before, to };
      else spans.push({ thing, amount, from, to });
    });
    return spans;
  });
}
