import { z } from "zod";
import type { FieldPath, Mistake } from "./mistake.ts";
import { fieldName } from "./mistake.ts";
import { listed, nearest } from "./nearest.ts";
import type { WrittenFile } from "./read-yaml.ts";

type RawIssue = z.core.$ZodRawIssue;
type Issue = z.core.$ZodIssue;

/** Stands for the field's name, which a nested check does not know while it is being made. */
const FIELD = "{field}";

const KIND_WORDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  object: "a set of keys with values",
  record: "a set of names with values",
};

function kindOf(value: unknown): string {
  if (value === null) return "nothing";
  if (Array.isArray(value)) return "a list";
  return KIND_WORDS[typeof value] ?? "something else";
}

/** What the schema gives as an example, for instance `10-15 min`. */
function exampleOf(issue: RawIssue): string | null {
  const schema: unknown = issue.inst;
  const example = schema instanceof z.ZodType ? schema.meta()?.["examples"] : undefined;
  return Array.isArray(example) && typeof example[0] === "string" ? example[0] : null;
}

function asLike(issue: RawIssue): string {
  const example = exampleOf(issue);
  return example === null ? "" : ` like ${example}`;
}

function missing(issue: RawIssue): string {
  const example = exampleOf(issue);
  return example === null
    ? `"${FIELD}" is missing here; add it.`
    : `"${FIELD}" is missing here; add a line like "${FIELD}: ${example}".`;
}

function wrongKind(issue: RawIssue & { readonly code: "invalid_type" }): string {
  if (issue.input === null)
    return `"${FIELD}" is empty; write ${KIND_WORDS[issue.expected] ?? "a value"}${asLike(issue)}.`;
  return `"${FIELD}" should be ${KIND_WORDS[issue.expected] ?? issue.expected}${asLike(issue)}, not ${kindOf(issue.input)}.`;
}

function unknownKeys(issue: RawIssue & { readonly code: "unrecognized_keys" }): string {
  const known = issue.inst instanceof z.ZodObject ? Object.keys(issue.inst.shape) : [];
  // One issue may name several keys; the mistakes are told apart again by their lines.
  return issue.keys
    .map((key) => {
      const meant = nearest(key, known);
      const advice = meant === null ? `the keys are ${listed(known)}` : `did you mean "${meant}"`;
      return `There is no key "${key}" here; ${advice}${meant === null ? "." : "?"}`;
    })
    .join("\n");
}

function tooSmall(issue: RawIssue & { readonly code: "too_small" }): string {
  if (issue.origin === "string") return `"${FIELD}" is empty; write something, or take the line away.`;
  if (issue.origin === "array") return `"${FIELD}" is an empty list; name at least one.`;
  return `"${FIELD}" must be at least ${String(issue.minimum)}; write a larger number.`;
}

function tooBig(issue: RawIssue & { readonly code: "too_big" }): string {
  if (issue.origin === "string") {
    const length = String(issue.input).length;
    return `"${FIELD}" has ${String(length)} characters; shorten it to ${String(issue.maximum)}, or make two of it.`;
  }
  return `"${FIELD}" must be at most ${String(issue.maximum)}; write a smaller number.`;
}

const BAD_NAME = "use lower-case words joined by hyphens, like peel-garlic.";

/** One sentence for what the schema refuses: zod's own words are for programmers. */
export function sentenceOf(issue: RawIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return issue.input === undefined ? missing(issue) : wrongKind(issue);
    case "invalid_union":
      if (issue.input === undefined) return missing(issue);
      return `"${FIELD}" cannot be ${kindOf(issue.input)}; write it${asLike(issue)}.`;
    case "unrecognized_keys":
      return unknownKeys(issue);
    case "invalid_value":
      return `"${FIELD}" cannot be ${JSON.stringify(issue.input)}; write ${listed(issue.values.map(String), "or")}.`;
    case "too_small":
      return tooSmall(issue);
    case "too_big":
      return tooBig(issue);
    case "invalid_key":
      return `"${FIELD}" cannot be a name; ${BAD_NAME}`;
    case "invalid_format":
      return `"${String(issue.input)}" cannot be a name; ${BAD_NAME}`;
    case "invalid_element":
    case "not_multiple_of":
    case "custom":
      return issue.message ?? `"${FIELD}" cannot be read; see the page on the recipe format.`;
  }
}

/** Whether an issue only says that the value is of another kind than this branch of a union wants. */
function isOtherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === "invalid_union") return issue.errors.every((branch) => branch.every(isOtherKind));
  return issue.code === "invalid_type";
}

/** The issues that matter: in a union, those of the branch that the writer was evidently at. */
function meant(
  issue: Issue,
  above: FieldPath,
): readonly { readonly path: FieldPath; readonly issue: Issue }[] {
  const path = [...above, ...issue.path.map((part) => (typeof part === "number" ? part : String(part)))];
  const branch =
    issue.code === "invalid_union" ? issue.errors.find((errors) => !errors.some(isOtherKind)) : undefined;
  if (branch === undefined) return [{ path, issue }];
  return branch.flatMap((inner) => meant(inner, path));
}

/** Turns what the schema refused into mistakes with lines. */
export function shapeMistakes(error: z.ZodError, written: WrittenFile): readonly Mistake[] {
  const at = (path: FieldPath, sentence: string): Mistake => {
    const name = path.findLast((part) => typeof part === "string") ?? "this file";
    const { file } = written;
    return {
      file,
      line: written.lineOf(path),
      field: fieldName(path),
      sentence: sentence.replaceAll(FIELD, name),
    };
  };
  return error.issues.flatMap((top) =>
    meant(top, []).flatMap(({ path, issue }) => {
      if (issue.code !== "unrecognized_keys") return [at(path, issue.message)];
      const sentences = issue.message.split("\n");
      return issue.keys.map((key, index) => at([...path, key], sentences[index] ?? issue.message));
    }),
  );
}
