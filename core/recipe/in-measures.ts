import type { Amount } from "../units/amount.ts";
import { unitIn, type MeasureSystem } from "../units/measure-system.ts";
import { unitWords } from "../units/unit.ts";
import type { DishFile, IngredientFile, StepFile } from "./dish-file.ts";
import type { Finding } from "./draft.ts";
import type { FieldPath } from "./mistake.ts";

/** A dish whose bare cups, pints and spoons are those that it says, and what is wrong with them. */
export interface InMeasures {
  readonly file: DishFile;
  readonly findings: readonly Finding[];
}

type Read = (amount: Amount, path: FieldPath) => Amount;

function reader(system: MeasureSystem, findings: Finding[]): Read {
  return (amount, path) => {
    if (amount.kind === "to-taste") return amount;
    const unit = unitIn(system, amount.unit);
    if (unit !== null) return { ...amount, unit };
    const one = unitWords(amount.unit).one;
    findings.push({
      path,
      sentence: `There is no ${system} ${one}; write milliliters, or whose ${one} it is, like imperial ${one}.`,
    });
    return amount;
  };
}

function ingredientIn(id: string, file: IngredientFile, read: Read): IngredientFile {
  const at = ["ingredients", id];
  return {
    ...file,
    amount: read(file.amount, file.line === null ? [...at, "amount"] : at),
    swaps: file.swaps.map((swap, index) => {
      const path = [...at, "swaps", index];
      const changes = Object.entries(swap.changes ?? {}).map(([name, amount]) => [
        name,
        read(amount, [...path, "changes", name]),
      ]);
      return {
        ...swap,
        ...(swap.amount === undefined ? {} : { amount: read(swap.amount, [...path, "amount"]) }),
        ...(swap.changes === undefined
          ? {}
          : { changes: Object.fromEntries(changes) as typeof swap.changes }),
      };
    }),
  };
}

function stepIn(id: string, file: StepFile, read: Read): StepFile {
  if (file.with === undefined) return file;
  const uses = file.with.map((use) => ({
    ...use,
    amount: use.amount === null ? null : read(use.amount, ["steps", id, "with", use.ingredient]),
  }));
  return { ...file, with: uses };
}

/** Reads the bare names of a dish's measures as its `measures` says; the US ones where it says nothing. */
export function inMeasures(file: DishFile): InMeasures {
  const system = file.measures ?? "us";
  if (system === "us") return { file, findings: [] };
  const findings: Finding[] = [];
  const read = reader(system, findings);
  const mapped = <T>(of: Readonly<Record<string, T>>, each: (id: string, one: T) => T): Record<string, T> =>
    Object.fromEntries(Object.entries(of).map(([id, one]) => [id, each(id, one)]));
  return {
    file: {
      ...file,
      ingredients: mapped(file.ingredients, (id, one) => ingredientIn(id, one, read)),
      steps: mapped(file.steps, (id, one) => stepIn(id, one, read)),
    },
    findings,
  };
}
