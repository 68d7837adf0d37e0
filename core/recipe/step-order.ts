import { seconds } from "../units/quantity.ts";
import type { AfterFile } from "./dish-file.ts";
import type { Draft, Finding } from "./draft.ts";
import { listed, nearest } from "./nearest.ts";

/** The steps that come before each step: as written, or the step above where nothing is written. */
export function linksOf(draft: Draft): ReadonlyMap<string, readonly AfterFile[]> {
  const links = new Map<string, readonly AfterFile[]>();
  let above: string | null = null;
  for (const [id, file] of draft.steps) {
    const usual = above === null ? [] : [{ step: above, atLeast: seconds(0), atMost: null }];
    links.set(id, file === null ? [] : (file.after ?? usual));
    above = id;
  }
  return links;
}

function unknownSteps(draft: Draft, id: string, links: readonly AfterFile[]): readonly Finding[] {
  const known = [...draft.steps.keys()];
  return links
    .filter(({ step }) => !draft.steps.has(step))
    .map(({ step }) => {
      const meant = nearest(step, known);
      const advice =
        meant === null ? `the steps are ${listed(known.slice(0, 12))}.` : `did you mean "${meant}"?`;
      return {
        path: ["steps", id, "after", step],
        sentence: `There is no step "${step}" in this dish; ${advice}`,
      };
    });
}

/** A circle has no beginning: it is told from the step that stands first in the file. */
function fromTheTop(circle: readonly string[], order: readonly string[]): readonly string[] {
  const first = order.find((id) => circle.includes(id)) ?? "";
  const at = circle.indexOf(first);
  return [...circle.slice(at), ...circle.slice(0, at)];
}

/** The circles of steps that are met when following what comes before. */
function circles(links: ReadonlyMap<string, readonly AfterFile[]>): readonly (readonly string[])[] {
  const found: (readonly string[])[] = [];
  const settled = new Set<string>();
  const follow = (id: string, way: readonly string[]): void => {
    const start = way.indexOf(id);
    if (start >= 0) found.push(fromTheTop(way.slice(start).toReversed(), [...links.keys()]));
    if (start >= 0 || settled.has(id)) return;
    for (const { step } of links.get(id) ?? []) follow(step, [...way, id]);
    settled.add(id);
  };
  for (const id of links.keys()) follow(id, []);
  return found;
}

/** More names than this in one sentence nobody keeps in mind. */
const MOST_NAMED = 8;

function namesOf(circle: readonly string[]): string {
  const quoted = circle.map((id) => `"${id}"`);
  if (quoted.length <= MOST_NAMED) return listed(quoted);
  return listed([...quoted.slice(0, MOST_NAMED - 1), `${quoted.length - MOST_NAMED + 1} more`]);
}

function circleFinding(circle: readonly string[]): Finding {
  const [first = "", ...others] = circle;
  const path = ["steps", first, "after"];
  if (others.length === 0)
    return { path, sentence: `Step "${first}" waits for itself; name another step in its "after".` };
  return {
    path,
    sentence: `The steps ${namesOf(circle)} wait for each other in a circle; change the "after" of one of them.`,
  };
}

/** Steps that wait for what does not exist, or for each other. */
export function orderFindings(draft: Draft): readonly Finding[] {
  const links = linksOf(draft);
  return [
    ...[...links].flatMap(([id, after]) => unknownSteps(draft, id, after)),
    ...circles(links).map(circleFinding),
  ];
}
