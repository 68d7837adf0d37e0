/** The longest that is kept of one sentence, in seconds; commands take two to five. */
export const longestKeptS = 12;

/** The most sentences that are kept; the oldest goes when one more comes. */
export const mostKept = 100;

/** A sentence is taken back within this long, in seconds, or it was heard right as far as anybody can tell. */
export const takenBackWithinS = 30;
