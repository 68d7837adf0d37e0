/** The id of a line that the cook has written on the list. */
export const ownLine = (thing: string): string => `own: ${thing}`;
