/** Where a figure of safe keeping stands. */
export interface Source {
  /** As shown beside the figure. */
  readonly name: string;
  /** `read`: compared with the text itself. `memory`: as known, the text was not at hand. */
  readonly known: "read" | "memory";
}

/** The published guidance that figures and cautions come from, one name each. */
export const sources = {
  cooling: { name: "FDA Food Code 2022, 3-501.14", known: "memory" },
  holding: { name: "FDA Food Code 2022, 3-501.16", known: "memory" },
  reheating: { name: "FDA Food Code 2022, 3-403.11", known: "memory" },
  leftovers: { name: "USDA FSIS, Leftovers and Food Safety", known: "memory" },
  dangerZone: { name: "USDA FSIS, Danger Zone (40 °F to 140 °F)", known: "memory" },
  rice: { name: "UK Food Standards Agency and NHS on reheating rice", known: "memory" },
  beans: { name: "FDA Bad Bug Book, phytohaemagglutinin", known: "memory" },
  garlicOil: { name: "National Center for Home Food Preservation, Freezing Garlic-in-Oil", known: "read" },
  sprouts: { name: "FoodSafety.gov, Sprouts: What You Should Know", known: "memory" },
  honey: { name: "CDC, Botulism Prevention (honey)", known: "memory" },
  foil: { name: "CDC, Botulism Prevention (potatoes in foil)", known: "memory" },
  greenPotatoes: { name: "Missouri Poison Center, Green Potatoes and Potato Sprouts", known: "read" },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof sources;
