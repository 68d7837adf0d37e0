/** What a recipe, meal or kitchen file got wrong: where, and one sentence that says what to do about it. */
export interface Mistake {
  /** As given to the reader: "dishes/lentil-soup.yaml". */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  /** The way to the value within the file: "steps.simmer.time"; empty for the file as a whole. */
  readonly field: string;
  readonly sentence: string;
}

/** The steps from the top of a file to a value: keys of maps, positions (from 0) in lists. */
export type FieldPath = readonly (string | number)[];

/** "steps.simmer.after[1]". */
export function fieldName(path: FieldPath): string {
  return path.reduce<string>((name, part) => {
    if (typeof part === "number") return `${name}[${part}]`;
    return name === "" ? part : `${name}.${part}`;
  }, "");
}
