import { miseOf, stepsThatPrepare } from "../../mise/mise.ts";
import type { Place } from "../../mise/preparation-words-table.ts";
import { rawCaution, sayPreparation } from "../../mise/say-mise.ts";
import type { WorkKind } from "../../pace/pace.ts";
import { isOpen } from "../find-task.ts";
import type { IntentOf } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { told } from "../outcome.ts";
import { inParts } from "../speech.ts";

type Asked = IntentOf<"AskMise">["work"];

/** Which preparations a question is about, which steps see to such work themselves, and how both are called. */
const works: Readonly<
  Record<Exclude<Asked, "all">, { readonly at: Place; readonly kind: WorkKind; readonly said: string }>
> = {
  cutting: { at: "board", kind: "cutting", said: "cut" },
  washing: { at: "sink", kind: "washing", said: "washed" },
};

/** "What do I prepare?": what is still to be done before the steps call for it, the first need first. */
export function askMise(work: Asked, scene: Scene, kitchen: Kitchen): Outcome {
  const { session, sheet } = scene;
  const all = miseOf(session, sheet, kitchen.now);
  if (work === "all") {
    if (all.length === 0) return told("Nothing is left to prepare beforehand. Each step says what it needs.");
    const caution = rawCaution(all);
    return inParts("To prepare:", [...all.map(sayPreparation), ...(caution === null ? [] : [caution])]);
  }
  const { at, kind, said } = works[work];
  const list = all.filter(({ work: { acts } }) => acts.some(({ place }) => place === at));
  const steps = stepsThatPrepare(session.tasks, [kind])
    .filter((task) => isOpen(task, scene))
    .map(({ step }) => step.title);
  const titles = [...new Set(steps)].map((title) => `${title}, in its step`);
  if (list.length + titles.length === 0) return told(`Nothing more is to be ${said}.`);
  return inParts(list.length === 0 ? `Nothing to be ${said} beforehand; later:` : `To be ${said}:`, [
    ...list.map(sayPreparation),
    ...titles,
  ]);
}
