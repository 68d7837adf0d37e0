import { expect, it } from "vitest";
import { evening } from "./supper.ts";
import { sayings } from "./talk.ts";

it("[C120] a pace that was set or forgotten by touch is had back with 'undo', and the answer says so", () => {
  const set = evening([1, { type: "SetPace", kind: "cutting", wish: "slower" }]);
  expect(sayings(set, [2, "undo that"])[0]).toMatch(/^Undone: your pace\. /);
  const forgotten = evening([1, { type: "ForgetPace" }]);
  expect(sayings(forgotten, [2, "undo that"])[0]).toMatch(/^Undone: your pace is known again\. /);
});
