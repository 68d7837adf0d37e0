import { isPlural, normaliseFood } from "../food/names.ts";
import { listed as inList } from "../recipe/nearest.ts";
import { meets } from "./conditions.ts";
import type { Diet, DietName, FoodRule } from "./diet.ts";
import type { Finding } from "./findings.ts";
import { isWithin, type Larder, type Part } from "./groups.ts";
import { isItself, kindNamed, madeOf, partOfName, type Kind } from "./kind.ts";
import { allergyWords, foodRuleWords } from "./rule-words.ts";

/** What a diet has against a food. `of`: the group or food that it is about; null for the list as a whole. */
export interface Judgement extends Pick<Finding, "rule" | "verdict" | "why" | "because"> {
  readonly of: DietName | null;
}

/** A rule with what the food has to do with it. */
export interface Bearing {
  readonly rule: FoodRule;
  readonly part: Exclude<Part, "free">;
}

/** The narrower of two groups has the last word: "fruit: avoided, citrus fruit: allowed". */
const isNarrower = (a: FoodRule, b: FoodRule): boolean =>
  a.name.kind === "group" && b.name.kind === "group" && isWithin(a.name.group, b.name.group);

/**
 * The rules that bear on a food. One about the very food stands alone, unless the recipe tells of something else in it
 * (fried lentils are lentils, and more); of groups that the food is of, a narrower one
 * stands for a wider one; what it is only made with nothing lifts but a rule about the food itself.
 */
export function bearings(kind: Kind, diet: Diet, larder: Larder): readonly Bearing[] {
  const own = diet.foods.filter((rule) => isItself(kind, rule.name));
  if (own.length > 0 && !kind.hasMore) return own.map((rule) => ({ rule, part: "is" }));
  const all = diet.foods.flatMap((rule): readonly Bearing[] => {
    const part = partOfName(kind, rule.name, larder);
    return part === "free" ? [] : [{ rule, part }];
  });
  const of = all.filter(({ part }) => part === "is");
  return all.filter(({ rule, part }) => part !== "is" || !of.some((other) => isNarrower(other.rule, rule)));
}

/** The verb that goes with a food: "lentils are", "salt is". */
const verb = (item: string, one: string, many: string): string => (isPlural(item) ? many : one);
const is = (item: string): string => verb(item, "is", "are");

function overAllergy(kind: Kind, { name, part }: AllergyBearing): Judgement {
  const { item } = kind;
  const { said } = name;
  const why = {
    is: `${item} ${verb(item, "counts", "count")} as ${said}`,
    has: `${item} ${is(item)} made with ${said}`,
    may: `${item} may hold ${said} (the packet tells)`,
    unknown: `I cannot tell whether ${item} ${verb(item, "holds", "hold")} ${said}`,
  }[part];
  return {
    of: name,
    rule: allergyWords(name),
    verdict: part === "is" || part === "has" ? "not allowed" : "cannot tell",
    why: `${why}, an allergy that this diet names.`,
    because: null,
  };
}

function overAvoided(kind: Kind, { rule, part }: Bearing): Judgement {
  const { item } = kind;
  const { said } = rule.name;
  const isSame = normaliseFood(said) === normaliseFood(item);
  const counts = `${item} ${verb(item, "counts", "count")} as ${said}, which ${is(said)} avoided.`;
  const why = {
    is: isSame ? `${item} ${is(item)} avoided.` : counts,
    has: `${item} ${is(item)} made with ${said}, which ${is(said)} avoided.`,
    may: `${item} may hold ${said}, which ${is(said)} avoided; the packet tells.`,
    unknown: `I cannot tell whether ${item} ${verb(item, "holds", "hold")} ${said}, which ${is(said)} avoided.`,
  }[part];
  const verdict = part === "is" || part === "has" ? "not allowed" : "cannot tell";
  return { of: rule.name, rule: foodRuleWords(rule), verdict, why, because: rule.because };
}

function overThese(kind: Kind, bearing: Bearing, larder: Larder): readonly Judgement[] {
  const { rule, part } = bearing;
  if (rule.these === null) return [];
  const parts = rule.these.map((name) => partOfName(kind, name, larder));
  if (part === "is" && parts.includes("is")) return [];
  const isSure = part === "is" && parts.every((one) => one === "free");
  const only = `of ${rule.name.said} only ${inList(rule.these.map(({ said }) => said))} may be eaten`;
  const why = isSure
    ? `${kind.item} ${is(kind.item)} none of those listed: ${only}.`
    : `I cannot tell which ${rule.name.said} are in ${kind.item}: ${only}.`;
  const verdict = isSure ? "not allowed" : "cannot tell";
  return [{ of: rule.name, rule: foodRuleWords(rule), verdict, why, because: rule.because }];
}

function overCondition(kind: Kind, { rule, part }: Bearing, larder: Larder): readonly Judgement[] {
  if (rule.only === null) return [];
  const met = part === "is" ? meets(kind, rule.only, larder) : "unknown";
  if (met === "yes") return [];
  const { item } = kind;
  const { said } = rule.name;
  const must = `${said} must be ${rule.only}`;
  const whole = `I cannot tell whether ${item} ${is(item)} ${rule.only}; ${must}.`;
  const inside = `I cannot tell whether the ${said} in ${item} ${is(said)} ${rule.only}.`;
  return [
    {
      of: rule.name,
      rule: foodRuleWords(rule),
      verdict: met === "no" ? "not allowed" : "cannot tell",
      why:
        met === "no" ? `${item} ${is(item)} not ${rule.only}, and ${must}.` : part === "is" ? whole : inside,
      because: rule.because,
    },
  ];
}

/** One sentence for all that nobody can tell of a food that is in no table: a list of them would hide the others. */
function overUnknown(
  kind: Kind,
  rules: readonly FoodRule[],
  allergies: readonly DietName[],
): readonly Judgement[] {
  const names = [...allergies, ...rules.map(({ name }) => name)].map(({ said }) => said);
  if (names.length === 0) return [];
  const held = `whether ${kind.item} ${verb(kind.item, "holds", "hold")} ${inList(names, "or")}`;
  return [
    {
      of: null,
      rule: [...allergies.map(allergyWords), ...rules.map(foodRuleWords)].join("; "),
      verdict: "cannot tell",
      why: `I cannot tell ${held}. ${kind.why ?? ""}`.trim(),
      because: rules.find(({ because }) => because !== null)?.because ?? null,
    },
  ];
}

/** Whether a rule restricts what it is about. */
const isStrict = ({ verdict, allowance, only, these }: FoodRule): boolean =>
  verdict === "avoided" || allowance !== null || only !== null || these !== null;

const ONLY_LISTED = "only what is listed";

const isWater = ({ foods }: Kind): boolean => foods.length === 1 && foods[0]?.name === "water";

const isListed = ({ rule, part }: Bearing): boolean => part === "is" && rule.verdict === "allowed";

/** Whether all that the packet lists is on the diet's list. */
function areListed(kind: Kind, diet: Diet, larder: Larder): boolean {
  const held = madeOf(kind, larder);
  return held?.every((one) => isWater(one) || bearings(one, diet, larder).some(isListed)) === true;
}

function overList(kind: Kind, diet: Diet, larder: Larder, all: readonly Bearing[]): readonly Judgement[] {
  const isAvoided = all.some(({ rule, part }) => part === "is" && rule.verdict === "avoided");
  // Water needs no line: whose water is counted has a rule for it.
  if (
    diet.listed === "but" ||
    (all.some(isListed) && !kind.hasMore) ||
    isAvoided ||
    isWater(kind) ||
    areListed(kind, diet, larder)
  )
    return [];
  const isSure = kind.foods.length > 0;
  const why = isSure
    ? `${kind.item} ${is(kind.item)} not on the list of ${diet.name}.`
    : `I cannot tell whether ${kind.item} ${is(kind.item)} on the list of ${diet.name}. ${kind.why ?? ""}`.trim();
  return [
    { of: null, rule: ONLY_LISTED, verdict: isSure ? "not allowed" : "cannot tell", why, because: null },
  ];
}

/** An allergy with what the food has to do with it. */
interface AllergyBearing {
  readonly name: DietName;
  readonly part: Exclude<Part, "free">;
}

const allergiesOn = (kind: Kind, diet: Diet, larder: Larder): readonly AllergyBearing[] =>
  diet.allergies.flatMap((name) => {
    const part = partOfName(kind, name, larder);
    return part === "free" ? [] : [{ name, part }];
  });

/** What a diet has against a food, how much and how often of it there is left aside. */
export function judgeFood(kind: Kind, diet: Diet, larder: Larder): readonly Judgement[] {
  const all = bearings(kind, diet, larder);
  const allergies = allergiesOn(kind, diet, larder);
  const isKnown = ({ part }: { readonly part: Part }): boolean => part !== "unknown";
  const known = all.filter(isKnown);
  const unknown = (one: { readonly part: Part }): boolean => !isKnown(one);
  return [
    ...allergies.filter(isKnown).map((one) => overAllergy(kind, one)),
    ...known.filter(({ rule }) => rule.verdict === "avoided").map((one) => overAvoided(kind, one)),
    ...overUnknown(
      kind,
      all.filter((one) => unknown(one) && isStrict(one.rule)).map(({ rule }) => rule),
      allergies.filter(unknown).map(({ name }) => name),
    ),
    ...known
      .filter(({ rule }) => rule.verdict === "allowed")
      .flatMap((one) => [...overThese(kind, one, larder), ...overCondition(kind, one, larder)]),
    ...overList(kind, diet, larder, all),
  ];
}

/** Whether every diet allows a food by its name alone, as much of it as one likes; one that nobody knows is none of these. */
export function isAllowed(name: string, diets: readonly Diet[], larder: Larder): boolean {
  const kind = kindNamed(name, larder);
  return kind.foods.length > 0 && diets.every((diet) => judgeFood(kind, diet, larder).length === 0);
}
