import type { WorkKind } from "../pace/pace.ts";

/** What kinds of work are called when the cook speaks of them: "I chop slowly", "chopping takes me longer". */
const words: Readonly<Record<WorkKind, { readonly verbs: string; readonly doing: string }>> = {
  washing: { verbs: "wash clean", doing: "washing cleaning" },
  cutting: { verbs: "chop cut slice peel dice", doing: "chopping cutting slicing peeling dicing" },
  mixing: { verbs: "mix stir knead whisk mash", doing: "mixing stirring kneading whisking mashing" },
  shaping: { verbs: "roll shape fill", doing: "rolling shaping filling" },
  stove: { verbs: "fry", doing: "frying" },
  plating: { verbs: "plate dress garnish", doing: "plating dressing garnishing" },
  other: { verbs: "", doing: "" },
};

const listOf = (text: string): readonly string[] => text.split(" ").filter((word) => word !== "");
const all = Object.values(words);

/** "Chop", as in "I chop slowly". */
export const workVerbs: readonly string[] = all.flatMap(({ verbs }) => listOf(verbs));

/** "Chopping", as in "chopping takes me longer". */
export const workNouns: readonly string[] = [...all.flatMap(({ doing }) => listOf(doing)), "other work"];

/** The kind that such a word is of; null where it is of none. */
export function kindOfWork(said: string): WorkKind | null {
  if (said === "other work") return "other";
  const entries = Object.entries(words) as readonly [WorkKind, (typeof words)[WorkKind]][];
  return (
    entries.find(([, { verbs, doing }]) => [...listOf(verbs), ...listOf(doing)].includes(said))?.[0] ?? null
  );
}
