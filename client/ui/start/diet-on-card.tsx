import type { Finding, StandIns } from "../../../core/diet/findings.ts";
import { Choice } from "../parts/choice.tsx";
import { aboutWhat, DietFindings } from "./diet-findings.tsx";
import { DietLine } from "./diet-line.tsx";
import type { DietProps } from "./diet-props.ts";
import { useRechecked } from "./use-rechecked.ts";

/** An ingredient that something may be taken for. */
interface Replaceable {
  readonly name: string;
  readonly standIns: StandIns;
}

/** Several rules may have something against one ingredient: it is offered once. */
function replaceable(findings: readonly Finding[]): readonly Replaceable[] {
  const all = findings.flatMap((finding) =>
    finding.standIns === null ? [] : [{ name: aboutWhat(finding), standIns: finding.standIns }],
  );
  return all.filter(({ standIns: { dish, ingredient } }, index) => {
    const first = all.findIndex(({ standIns: one }) => one.dish === dish && one.ingredient === ingredient);
    return first === index;
  });
}

/** What the diets have against a meal, and what the cook may take instead: chosen here, it goes into the meal. */
export function DietOnCard({ galley, meal, diet, swaps, onSwaps }: DietProps) {
  const offered = replaceable(diet.findings);
  const rechecked = useRechecked(galley, meal, swaps);
  const isWith = swaps.length > 0;
  return (
    <>
      {offered.length > 0 && (
        <section class="card-asks" aria-label="What you may take instead">
          <h2>What you may take instead</h2>
          <ul>
            {offered.map(({ name, standIns }) => (
              <OneChoice key={name} name={name} standIns={standIns} swaps={swaps} onSwaps={onSwaps} />
            ))}
          </ul>
          {isWith && (
            <p class="diet-then" role="status">
              {rechecked.diet === null ? (
                rechecked.sentence
              ) : (
                <>
                  With that: <DietLine diet={rechecked.diet} />
                </>
              )}
            </p>
          )}
        </section>
      )}
      <DietFindings diet={isWith && rechecked.diet !== null ? rechecked.diet : diet} />
    </>
  );
}

interface OneChoiceProps extends Replaceable, Pick<DietProps, "swaps" | "onSwaps"> {}

function OneChoice({ name, standIns: { dish, ingredient, foods }, swaps, onSwaps }: OneChoiceProps) {
  const isOther = (one: (typeof swaps)[number]): boolean =>
    one.dish !== dish || one.ingredient !== ingredient;
  const use = swaps.find((one) => !isOther(one))?.use ?? "";
  const choose = (chosen: string): void => {
    const others = swaps.filter(isOther);
    onSwaps(chosen === "" ? others : [...others, { dish, ingredient, use: chosen }]);
  };
  const options = [["", "As written"] as const, ...foods.map((one) => [one.use, one.use] as const)];
  const how = foods.find((one) => one.use === use)?.how ?? null;
  return (
    <li>
      <p>Instead of {name}</p>
      <Choice name={`Instead of ${name}`} options={options} value={use} onChoose={choose} />
      {how !== null && <p class="hint">{how}</p>}
    </li>
  );
}
