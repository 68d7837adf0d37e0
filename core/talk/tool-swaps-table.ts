/** What may do the work of a tool that is not there. */
export interface ToolSwap {
  /** All names, in the singular, the first as it is said back. */
  readonly names: readonly [string, ...string[]];
  /** What does it instead, with ratio or time where they change, and what comes of it: a breath at most. */
  readonly say: string;
  /** The way of a step that does the same, as recipes name it: "oven" for "in the oven". null: none does. */
  readonly way: string | null;
}

const swap = (names: ToolSwap["names"], say: string, way: ToolSwap["way"] = null): ToolSwap => ({
  names,
  say,
  way,
});

/** Common practice, no source. Times and heats are where to begin to look; the recipe's own sign of doneness goes first. */
export const toolSwaps: readonly ToolSwap[] = [
  swap(
    ["pan", "frying pan"],
    "A hot tray in the oven at four hundred degrees, turned once. Allow half as long again, and all of it goes in at once.",
    "oven",
  ),
  swap(
    ["oven"],
    "A covered pan over low heat, in batches, turned often. It browns less evenly and wants you beside it.",
    "pan",
  ),
  swap(["grill"], "The top of a very hot oven, or a ridged pan. Turn sooner, and look often.", "oven"),
  swap(
    ["blender", "stick blender", "hand blender"],
    "A masher or a fork, and a sieve where it must be smooth. It stays coarser, and takes about five minutes more.",
  ),
  swap(["food processor"], "A knife and a grater. Cut small, and allow ten minutes more for each pound."),
  swap(["grater"], "A sharp knife: slice, stack, and cut across as finely as you can. Mind your fingers."),
  swap(["garlic press"], "Crush it under the flat of a knife with the blade away from you, then chop."),
  swap(["rolling pin"], "A straight bottle, floured, without its label."),
  swap(["whisk"], "Two forks held together. Allow twice as long."),
  swap(["masher"], "A fork, or the bottom of a clean jar."),
  swap(
    ["steamer"],
    "A sieve or an upturned plate in a pot with an inch of water, covered. Keep some water in it; steam scalds.",
  ),
  swap(
    ["colander", "sieve", "strainer"],
    "The lid held a finger's width open, away from you. Steam scalds; go slowly.",
  ),
  swap(["mortar", "pestle"], "A rolling pin over the spice in a folded cloth."),
  swap(["lid"], "A larger pan or a tray on top. It gets hot; take it off with a cloth, away from you."),
  swap(["peeler"], "A small knife, drawn away from your thumb. You lose a little more."),
  swap(
    ["baking paper", "parchment"],
    "A tray that is oiled, where your diet allows oil, or a silicone mat. Loosen with a spatula while it is warm.",
  ),
  swap(
    ["thermometer", "probe"],
    "Nothing that is sure. Go by the recipe's sign, and where food must reach a heat to be safe, cook it longer.",
  ),
  swap(
    ["scale", "scales"],
    "Cups and spoons: ask me how much in cups. Flour and greens are never exact that way.",
  ),
];

/** The tool of a name; null where it is none that is known. */
export const toolSwapFor = (name: string): ToolSwap | null =>
  toolSwaps.find(({ names }) => names.some((one) => one === name || `${one}s` === name)) ?? null;

/** All names that a cook may ask about. */
export const toolNames: readonly string[] = toolSwaps.flatMap(({ names }) => names);
