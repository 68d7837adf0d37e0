/** Who may help the cook. The caller calls them so, and so they answer: "helper done". */
export const helpers = ["helper", "second helper"] as const;
export type Helper = (typeof helpers)[number];

/** Who does a piece of work by hand. */
export type Worker = "cook" | Helper;
