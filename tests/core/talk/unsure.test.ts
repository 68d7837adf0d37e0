import { describe, expect, it } from "vitest";
import type { Dialogue, Kitchen, Reply } from "../../../core/talk/model.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { respondUnsure } from "../../../core/talk/respond-unsure.ts";
import { evening, kitchenAt } from "./supper.ts";

const kitchen = (dialogue: Dialogue = silentDialogue): Kitchen => ({
  ...kitchenAt(evening(), 3, dialogue),
  utteranceId: "say",
});
const heard = (...sentences: readonly string[]): readonly (readonly string[])[] =>
  sentences.map((sentence) => sentence.split(" "));
const orders = ({ orders: all }: Reply) => all.map(({ type }) => type);

const fifteenOrFifty = heard("set a timer for fifteen minutes", "set a timer for fifty minutes");

describe("an ear that is torn", () => {
  it("[C62] between two timers asks which was said, and starts neither", () => {
    const reply = respondUnsure(fifteenOrFifty, kitchen());
    expect(reply.say).toBe("Did you say fifteen or fifty? Say the first or the second.");
    expect(reply.orders).toEqual([]);
    expect(reply.dialogue.question?.kind).toBe("which");
  });

  it("[C62] between two ways of speaking asks too, and changes neither", () => {
    const reply = respondUnsure(heard("louder", "slower"), kitchen());
    expect(reply.say).toBe("Did you say louder or slower? Say the first or the second.");
    expect(reply.voice).toEqual([]);
  });

  it("[C62] a sentence that is the beginning of another is named whole", () => {
    const reply = respondUnsure(
      heard("set a timer for ten minutes", "set a timer for ten minutes for the bread"),
      kitchen(),
    );
    expect(reply.say).toContain("set a timer for ten minutes or set a timer for ten minutes for the bread");
  });

  it("[C63] two ways to say one thing are one", () => {
    const reply = respondUnsure(
      heard("set a timer for one five minutes", "set a timer for fifteen minutes"),
      kitchen(),
    );
    expect(orders(reply)).toEqual(["StartTimer"]);
  });

  it("[C63] a question is answered as the likeliest, whatever else it may have been", () => {
    const reply = respondUnsure(heard("when do we eat", "end the meal"), kitchen());
    expect(reply.say).toBe(respond("when do we eat", kitchen()).say);
  });

  it("[C63] what makes no sense now is no rival", () => {
    const reply = respondUnsure(
      heard("set a timer for ten minutes", "stop the trumpet timer maybe"),
      kitchen(),
    );
    expect(orders(reply)).toEqual(["StartTimer"]);
  });

  it.each([
    ["the first", 15],
    ["the second", 50],
    ["fifty", 50],
  ])("[C64] %j does what was picked", (answer, minutes) => {
    const { dialogue } = respondUnsure(fifteenOrFifty, kitchen());
    const picked = respond(answer, kitchen(dialogue));
    expect(orders(picked)).toEqual(["StartTimer"]);
    expect(JSON.stringify(picked.orders)).toContain(String(minutes * 60));
  });

  it("[C64] torn again, it asks the same again", () => {
    const first = respondUnsure(fifteenOrFifty, kitchen());
    const again = respondUnsure(heard("fifteen", "fifty"), kitchen(first.dialogue));
    expect(again.say).toBe(first.say);
    expect(again.orders).toEqual([]);
  });
});
