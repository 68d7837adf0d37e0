import type { Topic } from "./intent.ts";
import { phrasebook } from "./phrasebook.ts";
import { topics } from "./topics.ts";

const HEAD = `# What you can say

Every line below is read from the phrasebook, which also makes what the microphone listens for.
\`(this|that)\` is one or the other, \`[words]\` may be left out, \`{…}\` is a name, a number or a time of yours.
Typing understands all of it and some shorter forms.
`;

/** The page docs/what-you-can-say.md, whole. */
export function helpPage(): string {
  const chapters = [
    ...topics,
    { topic: "answers" as const, name: "answers", about: "Answering and correcting" },
  ];
  return `${HEAD}${chapters.map(({ topic, about }) => chapter(topic, about)).join("")}`;
}

function chapter(topic: Topic | "answers", about: string): string {
  const entries = phrasebook.filter((entry) => entry.topic === topic);
  const intents = [...new Set(entries.map(({ intent }) => intent))];
  const parts = intents.map((intent) => {
    const own = entries.filter((entry) => entry.intent === intent);
    const example = own.find((entry) => entry.example !== null)?.example ?? own[0]?.says[0] ?? "";
    const lines = own.flatMap(({ says }) => says).map((line) => `- ${line}`);
    return `\n### “${example}”\n\n${lines.join("\n")}\n`;
  });
  return `\n## ${about}\n${parts.join("")}`;
}
