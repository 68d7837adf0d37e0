import type { Task } from "../../../core/plan/model.ts";

/** What a cook answers to an order that begins with this word. */
const answers: Readonly<Record<string, string>> = {
  stir: "Stirred",
  flip: "Flipped",
  turn: "Turned",
  shake: "Shaken",
  toss: "Tossed",
  baste: "Basted",
  brush: "Brushed",
  skim: "Skimmed",
  scrape: "Scraped",
  check: "Checked",
  taste: "Tasted",
  rotate: "Rotated",
  mash: "Mashed",
  cover: "Covered",
  uncover: "Uncovered",
};

/** The answer to an attention moment: "Stirred" to "stir the soup", else "Seen to". */
export function attendedWord(order: string): string {
  if (/\blid off\b|\btake the lid\b/i.test(order)) return "Lid is off";
  if (/\blid (back )?on\b/i.test(order)) return "Lid is on";
  const first = /^\w+/.exec(order.toLowerCase())?.[0] ?? "";
  return answers[first] ?? "Seen to";
}

/** The answer to "put it on": where it has gone. */
export function startedWord({ step }: Task): string {
  const kinds = step.needs.map((need) => need.kind);
  if (kinds.includes("oven") || kinds.includes("fridge")) return "It's in";
  if (kinds.includes("burner")) return "It's on";
  return "It's going";
}

/** What has had its time: "It's off" the stove, "It's out" of the oven or the fridge. */
export function endedWord(task: Task | undefined): string {
  const kinds = task?.step.needs.map((need) => need.kind) ?? [];
  if (kinds.includes("oven") || kinds.includes("fridge")) return "It's out";
  return kinds.includes("burner") ? "It's off" : "It's done";
}
