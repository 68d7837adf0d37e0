const SHORT: ReadonlyMap<string, string> = new Map([
  ["what is", "what's"],
  ["that is", "that's"],
  ["it is", "it's"],
  ["there is", "there's"],
  ["where is", "where's"],
  ["how is", "how's"],
  ["when is", "when's"],
  ["i am", "i'm"],
  ["i have", "i've"],
  ["i will", "i'll"],
  ["they are", "they're"],
  ["we are", "we're"],
  ["let us", "let's"],
  ["do not", "don't"],
  ["did not", "didn't"],
  ["can not", "can't"],
  ["i would", "i'd"],
]);

/** How two words are run together in speech ("what is": "what's"); null where they are not. */
export const contractedForms = (pair: string): string | null => SHORT.get(pair) ?? null;

/** Forms that stand for two words each, and those that people type without the apostrophe. */
const FULL: ReadonlyMap<string, readonly string[]> = new Map([
  ...[...SHORT].map(([full, short]): [string, readonly string[]] => [short, full.split(" ")]),
  // "its", "were", "well" and "ill" are words of their own.
  ...[...SHORT]
    .filter(([, short]) => !/^(?:we're|i'll|i'd|how's|when's)$/.test(short))
    .map(([full, short]): [string, readonly string[]] => [short.replace("'", ""), full.split(" ")]),
  ["cannot", ["can", "not"]],
  ["isn't", ["is", "not"]],
  ["aren't", ["are", "not"]],
  ["haven't", ["have", "not"]],
  ["we've", ["we", "have"]],
  ["they've", ["they", "have"]],
  ["we'll", ["we", "will"]],
  ["you're", ["you", "are"]],
  ["wanna", ["want", "to"]],
]);

/** Every word in full: "what's" is read as "what is". */
export const inFull = (words: readonly string[]): readonly string[] =>
  words.flatMap((word) => FULL.get(word) ?? [word]);
