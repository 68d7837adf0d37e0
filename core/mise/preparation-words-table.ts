/** Where a preparation is done. */
export type Place = "board" | "sink" | "bowl";

/**
 * What recipes say was done to a food, and what the cook does for it: "minced: mince", with what belongs to the word
 * behind it ("patted dry"). Only words that tell work and nothing else: "ground", "frozen" or "cooked" may just as well
 * be how a food is bought, so they are not here. Common practice, no source.
 */
const words: Readonly<Record<Place, string>> = {
  board: [
    "chopped: chop, minced: mince, sliced: slice, diced: dice, cubed: cube, cut: cut, halved: halve",
    "quartered: quarter, peeled: peel, trimmed: trim, cored: core, seeded: seed, deseeded: deseed, pitted: pit",
    "stoned: stone, hulled: hull, stemmed: stem, shredded: shred, grated: grate, julienned: julienne",
    "crushed: crush, smashed: smash, torn: tear, zested: zest, scored: score, pricked: prick, snipped: snip",
    "shaved: shave, split: split, segmented: segment, shelled: shell, husked: husk, shucked: shuck",
    "deveined: devein, boned: bone, deboned: debone, skinned: skin, flaked: flake, crumbled: crumble, pared: pare",
    "broken: break, carved: carve, sectioned: section",
  ].join(", "),
  sink: [
    "rinsed: rinse, drained: drain, washed: wash, scrubbed: scrub, cleaned: clean, wiped: wipe, strained: strain",
    "picked over: pick over, patted dry: pat dry, squeezed dry: squeeze dry, shaken dry: shake dry, spun dry: spin dry",
  ].join(", "),
  bowl: [
    "beaten: beat, whisked: whisk, sifted: sift, melted: melt, softened: soften, mashed: mash, soaked: soak",
    "juiced: juice, squeezed: squeeze, thawed: thaw, defrosted: defrost, toasted: toast, marinated: marinate",
  ].join(", "),
};

/** "minced" -> "mince", with the place; "picked over" stands before "picked". */
export const preparationWords: ReadonlyMap<string, { readonly verb: string; readonly place: Place }> =
  new Map(
    (["board", "sink", "bowl"] as const).flatMap((place) =>
      words[place].split(", ").map((entry) => {
        const [done = "", verb = ""] = entry.split(": ");
        return [done, { verb, place }] as const;
      }),
    ),
  );

/** Words that may come behind a preparation and say how: "cut into sticks", "sliced thin". */
export const howWords: ReadonlySet<string> = new Set(
  "into in to thin fine small large thick long crosswise lengthwise over dry smooth well with on about as very".split(
    " ",
  ),
);

/** Where one of these stands, the work depends on something: the recipe's words are kept as they are. */
export const unlessWords: ReadonlySet<string> = new Set(
  "not never if or unless but except optional optionally".split(" "),
);

/** Foods that want a board and a knife of their own while they are raw. From memory; the rule itself: docs/sources.md. */
export const rawFoods: ReadonlySet<string> = new Set(
  (
    "chicken turkey duck goose beef pork lamb mutton veal mince sausage meat poultry fish salmon cod trout tuna " +
    "haddock shrimp prawn squid mussel clam oyster crab lobster scallop bacon liver steak egg"
  ).split(" "),
);
