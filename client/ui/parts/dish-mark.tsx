import type { DishMark as Mark } from "./dish-marks.ts";

/** The enamel button that stands for a dish. Its name always stands beside it, so it is not read out. */
export function DishMark({ mark }: { readonly mark: Mark | undefined }) {
  if (mark === undefined) return null;
  return (
    <span class={`mark dish-${mark.colour}`} aria-hidden="true">
      {mark.letter}
    </span>
  );
}
