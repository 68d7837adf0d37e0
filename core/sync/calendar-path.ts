/**
 * GET: the evening being cooked as a calendar file; the page links to it, the server answers. Not in protocol.ts: its
 * schemas would come into the page's first load with it.
 */
export const calendarPath = "/api/calendar";
