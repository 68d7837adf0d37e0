import type { Amount } from "../units/amount.ts";
import type { AfterFile, DishFile, IngredientFile, StepFile, WayFile } from "./dish-file.ts";
import { draftOf, inWords, itemOf, parseShape, salvagedDraft } from "./draft.ts";
import type { Draft, Finding } from "./draft.ts";
import type { FieldPath, Mistake } from "./mistake.ts";
import { fieldName } from "./mistake.ts";
import type { Dish, Ingredient, Need, Step, Swap, Use, Way, Ways } from "./model.ts";
import { inMeasures } from "./in-measures.ts";
import { lineFindings, withoutBroken } from "./line-sense.ts";
import { dishId, ingredientId, stepId } from "./model.ts";
import { readYaml } from "./read-yaml.ts";
import type { WrittenFile } from "./read-yaml.ts";
import { sentenceOf, shapeMistakes } from "./shape-mistakes.ts";
import { shareOut } from "./share-out.ts";
import { linksOf, orderFindings } from "./step-order.ts";
import { senseFindings } from "./step-sense.ts";
import { wayFindings } from "./way-sense.ts";

/** What came of one dish file. `dish` is null when there is any mistake. */
export interface DishRead {
  readonly dish: Dish | null;
  readonly mistakes: readonly Mistake[];
}

function swapOf(file: IngredientFile["swaps"][number]): Swap {
  return {
    use: file.use,
    amount: file.amount ?? null,
    effect: file.effect ?? null,
    changes: Object.entries(file.changes ?? {}).map(([id, amount]) => ({
      ingredient: ingredientId(id),
      amount,
    })),
  };
}

function ingredientOf(id: string, file: IngredientFile): Ingredient {
  return {
    id: ingredientId(id),
    item: itemOf(id, file),
    amount: file.amount,
    preparation: file.prep,
    food: file.food,
    weighs: file.weighs,
    optional: file.optional,
    swaps: file.swaps.map(swapOf),
  };
}

function needsOf({ needs }: WayFile): readonly Need[] {
  if (needs === undefined) return [];
  return [
    ...(needs.burner === undefined ? [] : [{ kind: "burner", count: needs.burner } as const]),
    ...(needs.oven === undefined ? [] : [{ kind: "oven", ...needs.oven } as const]),
    ...(needs.appliance ?? []).map((name) => ({ kind: "appliance", name }) as const),
    ...(needs.bowl ?? []).map((name) => ({ kind: "bowl", name }) as const),
    ...(needs.fridge === undefined ? [] : [{ kind: "fridge" } as const]),
  ];
}

function usesOf(file: StepFile, amounts: ReadonlyMap<string, Amount>): readonly Use[] {
  return (file.with ?? []).flatMap(({ ingredient }) => {
    const amount = amounts.get(ingredient);
    return amount === undefined ? [] : [{ ingredient: ingredientId(ingredient), amount }];
  });
}

function wayOf(name: string, file: WayFile): Way {
  return {
    name,
    do: file.do,
    hands: file.hands ?? "on",
    time: file.time,
    extend: file.extend ?? null,
    attend: file.attend ?? [],
    needs: needsOf(file),
    batch: file.batch ?? null,
  };
}

function waysOf(file: StepFile): Ways | null {
  if (file.way === undefined || file.or === undefined) return null;
  const others = Object.entries(file.or).map(([name, way]) => wayOf(name, way));
  return { all: [wayOf(file.way, file), ...others], taken: file.way, chosen: { by: "recipe" } };
}

function stepOf(
  id: string,
  file: StepFile,
  after: readonly AfterFile[],
  amounts: ReadonlyMap<string, Amount>,
): Step {
  return {
    id: stepId(id),
    title: file.title ?? inWords(id),
    do: file.do,
    uses: usesOf(file, amounts),
    hands: file.hands ?? "on",
    time: file.time,
    until: file.until ?? null,
    latest: file.latest ?? "soft",
    extend: file.extend ?? null,
    attend: file.attend ?? [],
    needs: needsOf(file),
    after: after.map((link) => ({ ...link, step: stepId(link.step) })),
    batch: file.batch ?? null,
    ways: waysOf(file),
    ahead: file.ahead ?? null,
    endsBeforeServing: file["serve-within"] ?? null,
    hold: file.hold ?? null,
  };
}

function dishFrom(id: string, file: DishFile, draft: Draft): Dish {
  const { amounts } = shareOut(draft);
  const links = linksOf(draft);
  const step = ([key, part]: readonly [string, StepFile]): Step => {
    return stepOf(key, part, links.get(key) ?? [], amounts.get(key) ?? new Map<string, Amount>());
  };
  const said = [file.dish, ...(file.says ?? [])];
  return {
    id: dishId(id),
    name: file.dish,
    says: said.filter((name, index) => said.indexOf(name) === index),
    about: file.about,
    cautions: file.cautions ?? [],
    yield: file.yield,
    ingredients: Object.entries(file.ingredients).map(([key, part]) => ingredientOf(key, part)),
    steps: Object.entries(file.steps).map(step),
  };
}

function located(written: WrittenFile, { path, sentence }: Finding): Mistake {
  return { file: written.file, line: written.lineOf(path), field: fieldName(path), sentence };
}

function emptiness(value: unknown, draft: Draft): readonly Finding[] {
  const isMap = (key: string): boolean => {
    const part: unknown = typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;
    return typeof part === "object" && part !== null;
  };
  const none = (key: "ingredients" | "steps"): FieldPath | null =>
    isMap(key) && draft[key].size === 0 ? [key] : null;
  return [
    { path: none("ingredients"), sentence: "This dish has no ingredients; list at least one." },
    { path: none("steps"), sentence: "This dish has no steps; write at least one." },
  ].flatMap(({ path, sentence }) => (path === null ? [] : [{ path, sentence }]));
}

/** Says in one sentence why a name is no food of the table or of a label; null: it is one. */
export type WhyNoFood = (name: string) => string | null;

function foodFindings(draft: Draft, whyNoFood: WhyNoFood): readonly Finding[] {
  return [...draft.ingredients].flatMap(([id, file]): readonly Finding[] => {
    const named = file?.food ?? null;
    const sentence = named === null ? null : whyNoFood(named);
    return sentence === null ? [] : [{ path: ["ingredients", id, "food"], sentence }];
  });
}

/**
 * Reads one dish.
 * @param file the name to put on mistakes
 * @param id the file's stem
 * @param whyNoFood judges the foods that ingredients name; left out where there is no table
 */
export function readDish(
  file: string,
  id: string,
  text: string,
  whyNoFood: WhyNoFood = () => null,
): DishRead {
  const { written, mistakes } = readYaml(file, text);
  if (written === null) return { dish: null, mistakes };
  const shape = parseShape(written.value, sentenceOf);
  const own = shape.success ? inMeasures(shape.data) : null;
  const read = own === null ? salvagedDraft(written.value) : draftOf(own.file);
  const strangers = lineFindings(read);
  const draft = withoutBroken(read, strangers);
  const findings = [
    ...strangers,
    ...(own?.findings ?? []),
    ...emptiness(written.value, draft),
    ...shareOut(draft).findings,
    ...orderFindings(draft),
    ...senseFindings(draft),
    ...wayFindings(draft),
    ...foodFindings(draft, whyNoFood),
  ];
  const all = [
    ...mistakes,
    ...(shape.success ? [] : shapeMistakes(shape.error, written)),
    ...findings.map((finding) => located(written, finding)),
  ].toSorted((a, b) => a.line - b.line);
  return { dish: own !== null && all.length === 0 ? dishFrom(id, own.file, draft) : null, mistakes: all };
}
