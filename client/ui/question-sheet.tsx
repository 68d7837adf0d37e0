import type { Question } from "../../core/talk/model.ts";
import type { Intent } from "../../core/talk/intent.ts";
import { capital } from "../../core/units/capital.ts";
import type { Deed, OnDeed } from "./parts/deed.ts";
import { Sheet } from "./parts/sheet.tsx";

interface QuestionSheetProps {
  readonly question: Question;
  readonly onDeed: OnDeed;
}

/** What "yes" and "no" mean for the question, in its own words. */
const consents: Readonly<Partial<Record<Intent["type"], readonly [yes: string, no: string]>>> = {
  Skip: ["Yes, leave it out", "No, keep it"],
  CancelAllTimers: ["Yes, cancel them", "No, let them run"],
  CancelTimer: ["Yes, cancel it", "No, let it run"],
  EndMeal: ["Yes, it is over", "No, cook on"],
  UndoThat: ["Yes, undo it", "No, it was right"],
  UseInstead: ["Yes, use that", "No, leave it"],
  AnswerNote: ["Yes, tonight", "Not tonight"],
};

/** Lengths to answer "For how long?" with. */
const lengths = [
  "one minute",
  "two minutes",
  "five minutes",
  "ten minutes",
  "fifteen minutes",
  "thirty minutes",
] as const;

interface AnswersProps extends QuestionSheetProps {
  readonly onSay: (text: string) => void;
}

/** The caller's question, with its answers as large keys; the voice answers it as well. */
export function QuestionSheet({ question, onDeed, onSay }: AnswersProps) {
  const leave: Deed = { label: "Never mind", intent: { type: "NeverMind" }, words: "never mind" };
  return (
    <Sheet title={question.prompt} kind="card" closing="Never mind" onClose={() => onDeed(leave)}>
      <div class={`answers answers-${question.kind}`}>
        {answersTo(question).map((deed) => (
          <button key={deed.label} type="button" class="key key-answer" onClick={() => onDeed(deed)}>
            {deed.label}
          </button>
        ))}
        {question.kind === "missing" &&
          takesLength(question.intent) &&
          lengths.map((length) => (
            <button key={length} type="button" class="key key-answer" onClick={() => onSay(length)}>
              {capital(length)}
            </button>
          ))}
      </div>
      <p class="hint">You can just say it.</p>
    </Sheet>
  );
}

const takesLength = ({ type }: Intent): boolean =>
  type === "StartTimer" || type === "Lengthen" || type === "Shorten";

function answersTo(question: Question): readonly Deed[] {
  switch (question.kind) {
    case "confirm": {
      const [yes, no] = consents[question.intent.type] ?? ["Yes", "No"];
      return [
        { label: yes, intent: { type: "Yes" }, words: "yes" },
        { label: no, intent: { type: "No" }, words: "no" },
        ...(question.intent.type === "AnswerNote"
          ? [{ label: "Drop the note", intent: { type: "DropNote" }, words: "drop the note" } as const]
          : []),
      ];
    }
    case "which":
      return question.candidates.map(({ name }, candidate) => ({
        label: capital(name),
        intent: { type: "Pick", candidate },
        words: name,
      }));
    case "more":
      return [{ label: "More", intent: { type: "More" }, words: "more" }];
    case "missing":
      return [];
  }
}
