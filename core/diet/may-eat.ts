import type { CookingMeal, Dish, Ingredient } from "../recipe/model.ts";
import { compare, ONE, ZERO } from "../units/rational.ts";
import { mayAgain, mealsHad, countedIn, shareOver, type Asked, type Much, type Times } from "./counting.ts";
import type { Diet } from "./diet.ts";
import { within, type EatenMeal } from "./eaten.ts";
import { percentWords } from "./figures.ts";
import { strictest, type Verdict } from "./findings.ts";
import type { Larder } from "./groups.ts";
import { bearings, judgeFood } from "./judge-food.ts";
import { kindOf, type Kind } from "./kind.ts";
import { notesOn } from "./notes.ts";
import { allowanceWords } from "./rule-words.ts";
import { capital } from "../units/capital.ts";

/** What is asked about: a food by a name, perhaps as a recipe writes it. */
export type AskedFood = Pick<Ingredient, "item" | "preparation" | "food">;

/** What an answer is found from. */
export interface Table {
  readonly diets: readonly Diet[];
  readonly larder: Larder;
  /** What is being cooked; null: nothing. */
  readonly meal: CookingMeal | null;
  /** The meals of the last days, without that one. */
  readonly eaten: readonly EatenMeal[];
}

/** What the diets say of a food that is asked about. */
export interface FoodAnswer {
  readonly verdict: Verdict;
  /** Sentences that can be said: what speaks against it, the strictest first; where nothing does, how much and how often. */
  readonly told: readonly string[];
  /** Cautions that hold whatever the diets say. */
  readonly notes: readonly string[];
}

interface Said {
  readonly verdict: Verdict;
  readonly why: string;
}

const often = (count: number, every: string): string =>
  count === 0
    ? `none so far this ${every}`
    : `${count === 1 ? "one meal" : `${count} meals`} of this ${every} had them, by the meal log`;

function byTimes(asked: Asked, allowance: Times, { meal, eaten }: Table): Said {
  const { said } = asked.rule.name;
  const { ago, unsure } = mealsHad(eaten, allowance.every, asked);
  const limit = `${said}: ${allowanceWords(allowance)}`;
  if (ago.length >= allowance.times) {
    const why = `${limit}; ${often(ago.length, allowance.every)}. ${mayAgain(ago, allowance)}`;
    return { verdict: "not allowed", why };
  }
  if (ago.length + unsure >= allowance.times) {
    const why = `I cannot tell how often ${said} was eaten this ${allowance.every}: a food in the log is not known.`;
    return { verdict: "cannot tell", why };
  }
  const isHere = meal !== null && countedIn(meal.dishes, asked).length > 0;
  const isLast = isHere && ago.length + 1 >= allowance.times;
  const here = isLast ? " This meal has it: eat it with this meal only." : "";
  return { verdict: "allowed", why: `${limit}; ${often(ago.length, allowance.every)}.${here}` };
}

function byAmount(asked: Asked, much: Much, { meal, eaten }: Table): Said {
  const { said } = asked.rule.name;
  const limit = `${said}: ${allowanceWords(much)}`;
  if (much.every === "serving") return { verdict: "allowed", why: `${limit}.` };
  const here: readonly (readonly Dish[])[] = meal === null ? [] : [meal.dishes];
  const share = shareOver([...within(eaten, much.every).map(({ dishes }) => dishes), ...here], asked, much);
  const isHere = meal !== null && countedIn(meal.dishes, asked).length > 0;
  const used = `${percentWords(share.low, share.high)} of that is taken${isHere ? ", with this meal" : ""}`;
  if (compare(share.low, ONE) >= 0) return { verdict: "not allowed", why: `${limit}; ${used}.` };
  if (share.unknown.length > 0 || compare(share.high, ONE) >= 0)
    return {
      verdict: "cannot tell",
      why: `I cannot tell how much ${said} the ${much.every} has had already.`,
    };
  const taken = share.high === ZERO ? "none of it is taken yet" : used;
  return { verdict: "allowed", why: `${limit}; ${taken}.` };
}

/** What one diet says; empty where it has nothing to say of the food. */
function byDiet(kind: Kind, diet: Diet, table: Table): readonly Said[] {
  const { larder } = table;
  const against = judgeFood(kind, diet, larder).map(({ verdict, why }): Said => ({ verdict, why }));
  const held = bearings(kind, diet, larder).filter(({ part }) => part === "is");
  // What nobody knows is no yes, though no rule speaks of it.
  if (against.length === 0 && kind.foods.length === 0 && held.length === 0)
    return [{ verdict: "cannot tell", why: `I do not know ${kind.item}, so I cannot tell.` }];
  const counted = held.flatMap(({ rule }): readonly Said[] => {
    if (rule.allowance === null) return [];
    const asked = { rule, diet, larder };
    return rule.allowance.kind === "times"
      ? [byTimes(asked, rule.allowance, table)]
      : [byAmount(asked, rule.allowance, table)];
  });
  return [...against, ...counted];
}

/**
 * Whether a food may be eaten by every diet that holds: by what it is, and by how much and how often there was of it.
 * What nobody can tell is no yes. It is no medical advice: the diets are what the cook wrote down.
 */
export function mayEat(asked: AskedFood, table: Table): FoodAnswer {
  // As the check finds it out: a bare "flour" may be any, and what the table knows of some says nothing of all.
  const kind = kindOf(asked, table.larder);
  const all = table.diets.flatMap((diet) => byDiet(kind, diet, table));
  const verdict = strictest(all.map((one) => one.verdict));
  const of = (wanted: Verdict): readonly string[] =>
    all.filter((one) => one.verdict === wanted).map(({ why }) => capital(why));
  // How often it may be had is worth knowing, unless it may not be had at all.
  const told = [...of(verdict), ...(verdict === "cannot tell" ? of("allowed") : [])];
  return { verdict, told: [...new Set(told)], notes: notesOn([asked], table.larder) };
}
