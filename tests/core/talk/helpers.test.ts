import { describe, expect, it } from "vitest";
import type { MealLog } from "../../../core/cook/session.ts";
import { helpers } from "../../../core/plan/worker.ts";
import { taskId } from "../../../core/plan/model.ts";
import { occasionsIn } from "../../../core/talk/listening.ts";
import { evening, give, kitchenAt } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

const say = (log: MealLog, ...lines: readonly Line[]): string => sayings(log, ...lines).at(-1) ?? "";
const there = (log: MealLog): readonly string[] => log.session?.helpers.map(({ helper }) => helper) ?? [];
const handed = (log: MealLog, index = 0): string | undefined => log.session?.helpers[index]?.inHand?.task;
const helped: Line = [1, "someone is helping me"];

describe("a second pair of hands", () => {
  it("[C160] is welcomed, and told how to answer; a third too, a fourth not", () => {
    const { log, replies } = talk(evening(), helped);
    expect(replies[0]?.say).toMatch(
      /^Good, there are two of you. Say "helper done" after each step that I call for the helper\./,
    );
    expect(there(log)).toEqual(["helper"]);
    const three = talk(log, [2, "another helper is here"]);
    expect(three.replies[0]?.say).toMatch(/^Good, there are three of you. Say "second helper done"/);
    expect(there(three.log)).toEqual(["helper", "second helper"]);
    expect(say(three.log, [3, "I have another helper"])).toBe("I can call for three of you at most.");
  });

  it("[C161] says that a step is done, and hears the next one", () => {
    const { log } = talk(evening(), helped);
    const before = handed(log);
    const { log: then, replies } = talk(log, [4, "helper done"]);
    expect(then.session?.progress.get(taskId(before ?? ""))?.state).toBe("done");
    const next = handed(then);
    expect(next).not.toBe(before);
    expect(replies[0]?.say).toMatch(next === undefined ? /^Good\.$/ : /^Good\. Helper, please\. /);
    expect(then.session?.focus?.task).toBe(log.session?.focus?.task);
  });

  it("[C161] the cook's own done is the cook's, whatever the helper is at", () => {
    const { log } = talk(evening(), helped, [1, "the oven is on"]);
    const [mine, theirs] = [log.session?.focus?.task, handed(log)];
    const { log: then } = talk(log, [4, "done"]);
    expect(then.session?.progress.get(mine ?? taskId(""))?.state).toBe("done");
    expect(handed(then)).toBe(theirs);
  });

  it("[C162] is told what there is to do, and that there is nothing", () => {
    const { log } = talk(evening(), helped);
    expect(say(log, [2, "what does the helper do"])).toMatch(/^Helper, please\. /);
    expect(say(log, [2, "what does the helper do"], [2, "what now"])).not.toMatch(/Helper/);
    const last = log.session?.tasks.flatMap(({ id }) => (id === handed(log) ? [] : [id])) ?? [];
    const bare = last.reduce(
      (so, id) =>
        so.session?.progress.get(id)?.state === "done" ? so : give(so, 2, { type: "SkipTask", task: id }),
      log,
    );
    expect(say(bare, [3, "helper done"], [3, "what does the helper do"])).toBe(
      "Nothing for the helper just now.",
    );
  });

  it("[C163] is given what the cook has in hand, or a step by its name", () => {
    const { log } = talk(evening(), helped);
    const mine = log.session?.focus?.task;
    const { log: then, replies } = talk(log, [2, "give that to the helper"]);
    expect(handed(then)).toBe(mine);
    expect(replies[0]?.say).toMatch(/^Helper, please\. /);
    const title = log.session?.tasks.find(({ id }) => id === mine)?.step.title ?? "";
    expect(handed(talk(log, [2, `let the helper do the ${title.replace(/^\w+ the /, "")}`]).log)).toBe(mine);
  });

  it("[C164] leaves, and what is not finished is named; alone again, nobody else is there", () => {
    const { log } = talk(evening(), helped, [1, "a helper is here"]);
    const title = log.session?.tasks.find(({ id }) => id === handed(log))?.step.title;
    expect(say(log, [3, "the helper has left"])).toBe(
      `Good. The second helper stays. Not finished: ${title}.`,
    );
    const { log: alone, replies } = talk(log, [3, "I am alone again"]);
    expect(replies[0]?.say).toMatch(/^Just you again\. Not finished: /);
    expect(there(alone)).toEqual([]);
    expect(say(alone, [4, "I am alone again"])).toBe("You are alone already.");
    expect(say(alone, [4, "the helper has left"])).toBe(
      `There is no helper here. Say "someone is helping me" when there is.`,
    );
  });

  it("[C165] is taken back by an undo", () => {
    const { log, replies } = talk(evening(), helped, [2, "undo that"]);
    expect(there(log)).toEqual([]);
    expect(replies[1]?.say).toMatch(/^Undone: /);
  });

  it("[C166] is listened for only while there is one", () => {
    expect(helpers.filter((one) => occasionsIn(kitchenAt(evening(), 1)).has(one))).toEqual([]);
    const { log } = talk(evening(), helped);
    expect(helpers.filter((one) => occasionsIn(kitchenAt(log, 1)).has(one))).toEqual(["helper"]);
  });

  it("[C167] that one has not got is reckoned with when asked: how much sooner, or that it brings nothing", () => {
    const alone = evening();
    expect(say(alone, [0, "what if I had another pair of hands"])).toMatch(
      /^(With one more pair of hands all could be ready .* sooner, at .*|One more pair of hands would bring dinner no sooner)\.$/,
    );
    const { log } = talk(alone, helped, [1, "a helper is here"]);
    expect(say(log, [2, "what if I had one more cook"])).toBe(
      "There are three of you. I cannot call for more.",
    );
  });
});
