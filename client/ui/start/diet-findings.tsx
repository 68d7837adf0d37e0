import type { Finding } from "../../../core/diet/findings.ts";
import type { DietAnswer } from "../../../core/sync/protocol.ts";

const heads = { "not allowed": "Not allowed", "cannot tell": "Cannot tell" } as const;

/** What a finding is about: "salt, Lentil Soup". */
export const aboutWhat = ({ ingredient, dish }: Finding): string =>
  [ingredient, dish].filter((one) => one !== null).join(", ") || "the whole meal";

function OneFinding({ finding, mend }: { readonly finding: Finding; readonly mend: string | null }) {
  const { verdict, why, because, rule } = finding;
  return (
    <li class={`diet-finding is-${verdict.replace(" ", "-")}`}>
      <b>
        {heads[verdict]}: {aboutWhat(finding)}
      </b>
      <span>{why}</span>
      {mend !== null && <span class="diet-mend">{mend}</span>}
      <small>
        {rule}
        {because === null ? "" : `. ${because}`}
      </small>
    </li>
  );
}

/** All that the diets have against a meal, and what would mend it. */
export function DietFindings({ diet }: { readonly diet: DietAnswer }) {
  return (
    <section class="diet-findings" aria-label="What your diet says">
      {diet.problem !== null && <p>{diet.problem}</p>}
      {diet.findings.length > 0 && (
        <ul>
          {diet.findings.map((finding, index) => (
            <OneFinding
              key={`${finding.rule} ${aboutWhat(finding)} ${finding.why}`}
              finding={finding}
              // One deed may mend several things: it is told with the first.
              mend={
                diet.findings.findIndex(({ mend }) => mend === finding.mend) === index ? finding.mend : null
              }
            />
          ))}
        </ul>
      )}
      {diet.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <p class="diet-caution">
        {diet.diets.length > 0 && <>By {diet.diets.join(" and ")}. </>}
        This is no medical advice: packets and portions differ, and an allergy needs the packet.
      </p>
    </section>
  );
}
