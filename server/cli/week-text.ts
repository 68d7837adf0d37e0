import type { SittingCheck, WeekCheck } from "../../core/week/check-week.ts";
import type { Finding, Verdict } from "../../core/diet/findings.ts";
import type { WrittenList } from "../../core/shop/written-list.ts";
import { checkCaution } from "./check-words.ts";
import { wrapped } from "./columns.ts";
import { shopText } from "./shop-text.ts";
import { capital } from "../../core/units/capital.ts";

const width = 80;

const words: Readonly<Record<Verdict, string>> = {
  allowed: "allowed",
  "cannot tell": "I cannot tell",
  "not allowed": "not allowed",
};

const inset = (text: string, by: number): readonly string[] =>
  wrapped(text, width - by).map((line) => " ".repeat(by) + line);

function findingLines({ verdict, dish, ingredient, why, mend }: Finding): readonly string[] {
  const of = [ingredient, dish].filter((one) => one !== null).join(", ");
  const head = `${words[verdict]}${of === "" ? "" : `: ${of}`}. ${why}${mend === null ? "" : ` ${mend}`}`;
  return inset(`- ${head}`, 4);
}

function sittingLines({ name, check, troubles }: SittingCheck): readonly string[] {
  const verdict = check === null ? "" : `, ${words[check.verdict]}`;
  return [
    ...inset(`${name}${verdict}`, 2),
    ...troubles.flatMap((trouble) => inset(`- ${trouble}`, 4)),
    ...(check?.findings ?? []).flatMap(findingLines),
  ];
}

/** A week for people, and what to buy for it; at most 80 letters wide. */
export function weekText({ week, days, verdict, unused, fridge }: WeekCheck, list: WrittenList): string {
  return [
    `${week.name}, for ${week.eaters}`,
    ...days.flatMap(({ day, sittings }) => ["", capital(day), ...sittings.flatMap(sittingLines)]),
    "",
    ...wrapped(`The whole week: ${words[verdict]}.`, width),
    ...unused.flatMap((one) => wrapped(one, width)),
    ...fridge.flatMap((one) => wrapped(one, width)),
    "",
    shopText(list),
    "",
    ...wrapped(checkCaution, width),
  ].join("\n");
}
