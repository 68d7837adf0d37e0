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

/** Every circle of steps that is met when following what comes before; each step is named in one circle at most. */
function circles(links: ReadonlyMap<string, readonly AfterFile[]>): readonly (readonly string[])[] {
  const found: (readonly string[])[] = [];
  const settled = new Set<string>();
  const follow = (id: string, way: readonly string[]): void => {
    const start = way.indexOf(id);
    if (start >= 0) found.push(way.slice(start).toReversed());
    if (start >= 0 || settled.has(id)) return;
    for (const { step } of links.get(id) ?? []) follow(step, [...way, id]);
    settled.add(id);
  };
  for (const id of links.keys()) follow(id, []);
  return found;
}

function circleFinding(circle: readonly string[]): Finding {
  const [first = "", ...others] = circle;
  const path = ["steps", first, "after"];
  if (others.length === 0)
    return { path, sentence: `Step "${first}" waits for itself; name another step in its "after".` };
  const steps = listed(circle.map((id) => `"${id}"`));
  return {
    path,
    sentence: `The steps ${steps} wait for each other in a circle; change the "after" of one of them.`,
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
