import type { Pantry } from "../../../core/sync/protocol.ts";

/** What could not be read in the recipe files, and what to do about it. */
export function Mistakes({ mistakes }: Pick<Pantry, "mistakes">) {
  if (mistakes.length === 0) return null;
  return (
    <details class="mistakes">
      <summary>
        {mistakes.length === 1
          ? "One thing in the recipe files could not be read"
          : `${mistakes.length} things in the recipe files could not be read`}
      </summary>
      <ul>
        {mistakes.map(({ file, line, field, sentence }) => (
          <li key={`${file} ${line} ${field} ${sentence}`}>
            <code>
              {file}, line {line}
              {field === "" ? "" : `, ${field}`}
            </code>
            <span>{sentence}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
