import type { WorkKind } from "./pace.ts";

/**
 * The verbs that kitchens begin a step with, by kind of work. Common practice, no source; what is not here is "other".
 * Work that stands on a burner or in an oven is told by that, not by its verb.
 */
export const verbs: Readonly<Record<Exclude<WorkKind, "stove" | "other">, string>> = {
  washing: "wash rinse scrub drain soak wipe dry pat clean spin brush",
  cutting:
    "chop slice dice peel trim cut mince halve quarter shred grate julienne core pit stone seed hull zest carve " +
    "split cube crush pare snip string shell section segment debone bone prick score husk shave",
  mixing:
    "stir whisk mix knead beat fold cream blend toss combine mash puree thin whip grind pound emulsify process " +
    "sift season marinate rub coat dredge",
  shaping:
    "roll shape form flatten divide portion fill stuff wrap press crimp pleat braid stretch thread line",
  plating:
    "plate garnish arrange scatter dress finish top spoon ladle serve dust drizzle spread sprinkle pile layer " +
    "unmold assemble set",
};
