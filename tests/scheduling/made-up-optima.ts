import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { z } from "zod";
import type { Network } from "../../core/plan/engine/network.ts";
import type { MadeUpMeal } from "./made-up-networks.ts";

/** Where the proved ends of the made-up meals are kept. */
export const optimaFile = new URL("made-up-optima.json", import.meta.url);

const table = z.object({
  /** How the ends were proved. */
  how: z.string(),
  meals: z.array(z.object({ name: z.string(), network: z.string(), end: z.number().int() })),
});
export type OptimaTable = z.infer<typeof table>;

/** Tells one network from another: when the generator changes, an end kept from before is no longer believed. */
export function fingerprint(network: Network): string {
  return createHash("sha256").update(JSON.stringify(network)).digest("hex").slice(0, 12);
}

/** The proved ends that are kept. */
export function keptOptima(): OptimaTable {
  return table.parse(JSON.parse(readFileSync(optimaFile, "utf8")));
}

/** The proved end of a meal; null where none is kept for this very network. */
export function provedEnd(kept: OptimaTable, { name, network }: MadeUpMeal): number | null {
  const found = kept.meals.find((meal) => meal.name === name);
  return found?.network === fingerprint(network) ? found.end : null;
}
