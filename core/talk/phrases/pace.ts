import type { PaceWish } from "../../pace/pace.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

function entry(
  wish: PaceWish | null,
  example: string | null,
  says: readonly string[],
  typed: readonly string[] = [],
): PhraseEntry {
  return {
    intent: "MyPace",
    topic: "moving",
    occasion: "meal",
    example,
    says,
    typed,
    make: ({ work, working }) => ({ type: "MyPace", work: work ?? working ?? "", wish }),
  };
}

/** Who does it, in the words that kitchens have for it, and the verb that tells what work that is. */
function doer(words: string, work: string): readonly PhraseEntry[] {
  const pace = (wish: PaceWish, says: string): PhraseEntry => ({
    ...entry(wish, null, [says]),
    make: () => ({ type: "MyPace", work, wish }),
  });
  return [pace("slower", `i am a slow (${words})`), pace("faster", `i am a (fast|quick) (${words})`)];
}

/** How long the cook takes for a kind of work by hand. */
export const pacePhrases: readonly PhraseEntry[] = [
  entry("slower", "I chop slowly", [
    "i {work} slowly",
    "i am slow at {working}",
    "{working} takes me longer",
    "i take longer for {working}",
    "i need more time for {working}",
    "my {working} is slow",
  ]),
  entry(
    "faster",
    "I stir fast",
    [
      "i {work} (fast|quickly)",
      "i am (fast|quick) at {working}",
      "i take less time for {working}",
      "i need less time for {working}",
      "my {working} is (fast|quick)",
    ],
    ["{working} takes me less time"],
  ),
  entry("as-written", "I chop as the recipe says", [
    "i {work} as the (recipe says|recipes say)",
    "plan {working} as the (recipe says|recipes say)",
    "{working} takes me as long as the recipe says",
    "i take the time of the recipe for {working}",
  ]),
  entry(null, "go by what you know of my chopping", [
    "go by what you know of my {working}",
    "plan {working} as you have learned it",
    "forget what i said of my {working}",
  ]),
  ...doer("chopper|cutter|slicer|peeler", "chop"),
  ...doer("mixer|kneader|stirrer", "mix"),
  ...doer("washer|cleaner", "wash"),
];
