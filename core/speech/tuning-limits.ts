/** Between which figures the ear can be tuned, in dB: the least and the most. Apart, for a page that keeps them. */
export const tuningLimits = { gainDb: [-6, 20], quietestDb: [-74, -50] } as const;
