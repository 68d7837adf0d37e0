import type { DishId, IngredientId, StepId } from "../recipe/model.ts";
import type { Measured } from "../units/amount.ts";

/** What is to be otherwise the next time that a dish is cooked. */
export type Change =
  /** So many times the recipe's amount, "n/d". */
  | { readonly kind: "times"; readonly ingredient: IngredientId; readonly times: string }
  /** So much for so many servings. */
  | {
      readonly kind: "amount";
      readonly ingredient: IngredientId;
      readonly amount: Measured;
      readonly servings: number;
    }
  | { readonly kind: "leave-out"; readonly ingredient: IngredientId }
  /** null: the dish itself before the others. */
  | { readonly kind: "first"; readonly step: StepId | null }
  /** What cannot be computed; with the food that it is about, where it is about one. */
  | { readonly kind: "words"; readonly words: string; readonly ingredient: IngredientId | null };

/** A note for the next time. "used": nobody asked for it, but that much was used the last time. */
export interface Note {
  readonly dish: DishId;
  readonly change: Change;
  readonly from: "asked" | "used";
}

/** What the cook said to a note: done tonight, kept for another time, or not wanted any more. */
export const noteAnswers = ["applied", "kept", "dropped"] as const;
export type NoteAnswer = (typeof noteAnswers)[number];

/** A note from an evening before, and what became of it tonight. */
export interface OfferedNote {
  /** `noteKey` of the note. */
  readonly key: string;
  readonly note: Note;
  readonly state: "open" | NoteAnswer;
}

/** What a note is about: of two notes about the same thing only the later one counts. */
export function noteKey({ dish, change }: Note): string {
  switch (change.kind) {
    case "times":
    case "amount":
    case "leave-out":
      return `${dish}/${change.ingredient}`;
    case "first":
      return `${dish}#first`;
    case "words":
      return `${dish}#${change.words}`;
  }
}
