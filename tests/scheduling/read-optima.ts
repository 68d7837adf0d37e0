import { err, ok, type Result } from "../../core/units/result.ts";
import { instanceName } from "./read-instances.ts";

/** What is known of an instance's shortest end; `least` is null where no bound is given. */
export type Optimum =
  | { readonly kind: "exact"; readonly end: number }
  | { readonly kind: "between"; readonly least: number | null; readonly most: number }
  | { readonly kind: "impossible" };

/** The best end known: the optimum, else the upper end of what it lies between; null where there is none. */
export function bestKnown(optimum: Optimum): number | null {
  switch (optimum.kind) {
    case "exact":
      return optimum.end;
    case "between":
      return optimum.most;
    case "impossible":
      return null;
  }
}

/** "43", "104..105", "..83" (no lower bound given), "unsat". */
function parseOptimum(text: string): Optimum | null {
  if (text === "unsat") return { kind: "impossible" };
  if (/^\d+$/.test(text)) return { kind: "exact", end: Number(text) };
  const [, least, most] = /^(\d*)\.\.(\d+)$/.exec(text) ?? [];
  if (least === undefined || most === undefined) return null;
  return { kind: "between", least: least === "" ? null : Number(least), most: Number(most) };
}

/** A table of optima by instance, from a file with at least the columns `problem` and `optimum`. */
export function readOptima(file: string, text: string): Result<ReadonlyMap<string, Optimum>, string> {
  const [head = "", ...rows] = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const columns = head.split(",").map((name) => name.trim());
  const [problem, value] = [columns.indexOf("problem"), columns.indexOf("optimum")];
  if (problem < 0 || value < 0)
    return err(`${file} cannot be read: it has no columns "problem" and "optimum".`);
  const optima = new Map<string, Optimum>();
  for (const row of rows) {
    const cells = row.split(",").map((cell) => cell.trim());
    const [name, text] = [cells[problem] ?? "", cells[value] ?? ""];
    const optimum = parseOptimum(text);
    if (name === "" || optimum === null) return err(`${file} cannot be read: "${row}" tells no optimum.`);
    optima.set(instanceName(name), optimum);
  }
  return ok(optima);
}
