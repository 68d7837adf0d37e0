import type { Edges } from "./edges.ts";
import type { Nogoods } from "./nogoods.ts";
import type { Parts, Profile } from "./profile.ts";
import type { Trail } from "./trail.ts";

/** What propagates, as far as explanations must ask. */
export interface Propagators {
  readonly trail: Trail;
  readonly edges: Edges;
  readonly nogoods: Nogoods;
  readonly parts: Parts;
  /** By resource; null where it has no parts. */
  readonly profiles: readonly (Profile | null)[];
}
