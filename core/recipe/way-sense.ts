import type { StepFile, WayFile } from "./dish-file.ts";
import type { Draft, Finding } from "./draft.ts";
import type { FieldPath } from "./mistake.ts";
import { listed } from "./nearest.ts";
import { workFindings } from "./step-sense.ts";

/** Nobody keeps more ways of one thing in mind, and each costs the planner a plan. */
const MOST_WAYS = 5;

/** A name is said after the title: "cook the patties" and "in the oven" make one sentence. */
const OPENINGS = ["in", "on", "under", "over", "with", "at", "by"] as const;

/** One way with the place of its name and of its own fields in the file. */
interface Written {
  readonly name: string;
  readonly at: FieldPath;
  readonly work: WayFile;
}

/** "In the pan" and "in a pan" are one name to the ear. */
const heard = (name: string): string =>
  name
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== "" && word !== "a" && word !== "an" && word !== "the")
    .join(" ");

/** All that may differ between two ways, to compare. */
const whole = ({ do: what, hands, time, extend, attend, needs, batch }: WayFile): string =>
  JSON.stringify([what, hands ?? "on", time, extend ?? null, attend ?? [], needs ?? {}, batch ?? null]);

const reads = (name: string): boolean => {
  const [first = "", second] = name.toLowerCase().split(/\s+/);
  return second !== undefined && OPENINGS.some((opening) => opening === first);
};

function nameFinding({ name, at }: Written, before: readonly Written[]): Finding | null {
  const twin = before.find((other) => heard(other.name) === heard(name));
  if (twin !== undefined) {
    const sentence = `"${name}" and "${twin.name}" are one name to the ear; give one of the ways another.`;
    return { path: at, sentence };
  }
  if (reads(name)) return null;
  const sentence = `"${name}" cannot be said after the title; begin with ${listed(OPENINGS, "or")}, like "in the oven".`;
  return { path: at, sentence };
}

function workFinding({ name, at, work }: Written, before: readonly Written[]): Finding | null {
  const same = before.find((other) => whole(other.work) === whole(work));
  if (same !== undefined) {
    const sentence = `Nothing is different "${name}" from "${same.name}"; change its time or its needs, or take it away.`;
    return { path: at, sentence };
  }
  const { batch } = work;
  const counted = before.find((other) => other.work.batch !== undefined)?.work.batch;
  if (batch === undefined || counted === undefined) return null;
  if (batch.of === counted.of && batch.pieces === counted.pieces) return null;
  const sentence = `This way has ${batch.of} ${batch.pieces} and another ${counted.of} ${counted.pieces}; it is the same work, so count the same.`;
  return { path: [...at, "batch"], sentence };
}

function stepFindings(id: string, file: StepFile): readonly Finding[] {
  const others = Object.entries(file.or ?? {});
  const step: FieldPath = ["steps", id];
  if (others.length === 0) {
    if (file.way === undefined && file.or === undefined) return [];
    const sentence = `There is only one way to do this; write another under "or", or take this line away.`;
    return [{ path: [...step, file.way === undefined ? "or" : "way"], sentence }];
  }
  if (file.way === undefined) {
    const sentence = `The way above has no name; add a line like "way: in a pan" to the step.`;
    return [{ path: [...step, "or"], sentence }];
  }
  const all: readonly Written[] = [
    { name: file.way, at: [...step, "way"], work: file },
    ...others.map(([name, work]): Written => ({ name, at: [...step, "or", name], work })),
  ];
  const many =
    all.length <= MOST_WAYS
      ? []
      : [{ path: [...step, "or"], sentence: `A step has at most ${MOST_WAYS} ways; leave the poorest out.` }];
  return [
    ...many,
    ...all.flatMap((one, index) => {
      const before = all.slice(0, index);
      const found = [nameFinding(one, before), workFinding(one, before)].filter(
        (finding) => finding !== null,
      );
      return index === 0 ? found : [...found, ...workFindings(one.at, one.work)];
    }),
  ];
}

/** What the ways of a step get wrong against each other. */
export function wayFindings(draft: Draft): readonly Finding[] {
  return [...draft.steps].flatMap(([id, file]) => (file === null ? [] : stepFindings(id, file)));
}
