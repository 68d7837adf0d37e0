import { calendarPath } from "../../../core/sync/calendar-path.ts";

/** Fetches the evening's big moments for a calendar on another device; the server makes the file. */
export function CalendarKey() {
  return (
    <p class="deed-keys">
      <a class="key key-small key-link" href={calendarPath} download="">
        Calendar file
      </a>
    </p>
  );
}
