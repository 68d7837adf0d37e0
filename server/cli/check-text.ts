import type { MealCheck } from "../../core/diet/check.ts";
import type { Finding, Verdict } from "../../core/diet/findings.ts";
import { checkCaution } from "./check-words.ts";
import { wrapped } from "./columns.ts";

const width = 80;
const indent = "    ";

const answers: Readonly<Record<Verdict, string>> = {
  allowed: "allowed",
  "cannot tell": "I cannot tell",
  "not allowed": "not allowed",
};

const inset = (text: string): readonly string[] =>
  wrapped(text, width - indent.length).map((line) => indent + line);

function findingText(finding: Finding, several: boolean): readonly string[] {
  const { dish, ingredient, verdict, why, because, mend, rule, diet, howMuch } = finding;
  const of = [ingredient, dish].filter((one) => one !== null).join(", ");
  const much = howMuch === null || ingredient === null ? "" : ` (${howMuch})`;
  const head = `${answers[verdict]}: ${of === "" ? "the whole meal" : of}${much}`;
  return [
    ...wrapped(head.charAt(0).toUpperCase() + head.slice(1), width),
    ...inset(why),
    ...(because === null ? [] : inset(`Reason: ${because}`)),
    ...(mend === null ? [] : inset(`To mend it: ${mend}`)),
    ...inset(`Rule: ${rule}${several ? ` (${diet})` : ""}`),
    "",
  ];
}

function closing({ verdict, diets, findings }: MealCheck): string {
  const names = diets.map(({ name }) => name).join(" and ");
  const count = (wanted: Verdict): number => findings.filter((one) => one.verdict === wanted).length;
  if (verdict === "allowed") return `Allowed by ${names}.`;
  const [no, unsure] = [count("not allowed"), count("cannot tell")];
  const parts = [
    ...(no === 0 ? [] : [no === 1 ? "one thing is not allowed" : `${no} things are not allowed`]),
    ...(unsure === 0 ? [] : [`of ${unsure} I cannot tell`]),
  ].join(", and ");
  return `${names}: ${parts}.`;
}

/** What the diets say of a meal, for people; at most 80 letters wide. */
export function checkText(check: MealCheck): string {
  const { meal, diets, findings, ingredients, notes } = check;
  const clear = ingredients.filter(({ verdict }) => verdict === "allowed").length;
  const answer = closing(check);
  return [
    `${meal.name}, by ${diets.map(({ name }) => name).join(" and ")}`,
    "",
    ...findings.flatMap((one) => findingText(one, diets.length > 1)),
    ...wrapped(answer, width),
    ...wrapped(`${clear} of ${ingredients.length} ingredients are allowed as they stand.`, width),
    ...notes.flatMap((note) => ["", ...wrapped(note, width)]),
    "",
    ...wrapped(checkCaution, width),
  ].join("\n");
}
