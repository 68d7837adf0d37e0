import type { Kitchen, Reply } from "./model.ts";
import { respondTo } from "./respond-to.ts";
import { suggestions } from "./suggestions.ts";
import { understand } from "./understand.ts";

/**
 * The caller's answer to one utterance, heard or typed. Never throws: what is not understood is answered with what
 * could be said.
 */
export function respond(text: string, kitchen: Kitchen): Reply {
  const { intent } = understand(text, kitchen);
  return intent === null ? notUnderstood(text, kitchen) : respondTo(intent, text, kitchen);
}

function notUnderstood(text: string, kitchen: Kitchen): Reply {
  const [first] = suggestions(kitchen);
  const heard = text.trim();
  const say =
    heard === ""
      ? "I am listening."
      : `I did not get that. You can say "${first ?? "what now"}", or "what can I say".`;
  return {
    intent: null,
    say,
    orders: [],
    voice: [],
    house: [],
    list: [],
    dialogue: { ...kitchen.dialogue, lastSaid: say, lastHeard: heard.slice(0, 200), lastUnderstood: null },
  };
}
