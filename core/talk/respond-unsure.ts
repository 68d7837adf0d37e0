import type { Intent } from "./intent.ts";
import type { Kitchen, Question, Reply } from "./model.ts";
import { respond } from "./respond.ts";

/** One way to take what was heard. */
type Reading = { readonly words: readonly string[]; readonly intent: Intent; readonly reply: Reply };

/**
 * The answer where the ear is torn between sentences. One that changes nothing in the kitchen is answered as the
 * likeliest; where something would be started, changed or ended, the cook is asked which was meant, and nothing is done.
 * @param heard the sentences, the likeliest first; at least one
 */
export function respondUnsure(heard: readonly (readonly string[])[], kitchen: Kitchen): Reply {
  const likeliest = respond((heard[0] ?? []).join(" "), kitchen);
  const readings = differing(heard, kitchen);
  const { orders, voice, house, list, dialogue } = likeliest;
  const changesNothing =
    orders.length + house.length + list.length === 0 && voice.length === 0 && dialogue.question === null;
  if (readings.length < 2 || changesNothing) return likeliest;
  const asked = kitchen.dialogue.question;
  return asked?.kind === "which" ? put(asked, heard, kitchen) : put(whichOf(readings), heard, kitchen);
}

/** What it may mean: sentences that come to the same are one, and what makes no sense now is none. */
function differing(heard: readonly (readonly string[])[], kitchen: Kitchen): readonly Reading[] {
  const byDeed = new Map<string, Reading>();
  for (const words of heard) {
    const reply = respond(words.join(" "), kitchen);
    const { intent, say, orders, voice, house, list } = reply;
    const deed = JSON.stringify([say, orders, voice, house, list]);
    if (intent !== null && !byDeed.has(deed)) byDeed.set(deed, { words, intent, reply });
  }
  return [...byDeed.values()].slice(0, mostReadings);
}

/** More than three cannot be kept in mind from hearing them. */
const mostReadings = 3;

/** How many of them can be picked by name alone; the rest are picked by their place. */
const places = ["first", "second", "third"] as const;

function whichOf(readings: readonly Reading[]): Question {
  const names = tellingParts(readings.map(({ words }) => words));
  const last = names.at(-1) ?? "";
  const list = `${names.slice(0, -1).join(", ")} or ${last}`;
  const ways = places.slice(0, names.length).map((place) => `the ${place}`);
  return {
    kind: "which",
    candidates: readings.map(({ intent }, at) => ({ name: names[at] ?? "", intent })),
    prompt: `Did you say ${list}? Say ${ways.slice(0, -1).join(", ")} or ${ways.at(-1) ?? ""}.`,
  };
}

/** What each sentence has that the others have not: "fifteen" and "fifty"; the whole where that would be nothing. */
function tellingParts(sentences: readonly (readonly string[])[]): readonly string[] {
  const [first = []] = sentences;
  const shared = (from: (words: readonly string[], at: number) => string | undefined): number => {
    let count = 0;
    while (count < first.length && sentences.every((words) => from(words, count) === from(first, count)))
      count++;
    return count;
  };
  const before = shared((words, at) => words[at]);
  const behind = shared((words, at) => words[words.length - 1 - at]);
  const parts = sentences.map((words) => words.slice(before, Math.max(before, words.length - behind)));
  const isTelling = parts.every((part) => part.length > 0);
  return (isTelling ? parts : sentences).map((words) => words.join(" "));
}

function put(question: Question, heard: readonly (readonly string[])[], kitchen: Kitchen): Reply {
  return {
    intent: null,
    say: question.prompt,
    orders: [],
    voice: [],
    house: [],
    list: [],
    dialogue: {
      ...kitchen.dialogue,
      question,
      lastSaid: question.prompt,
      lastHeard: (heard[0] ?? []).join(" ").slice(0, 200),
      lastUnderstood: null,
    },
  };
}
