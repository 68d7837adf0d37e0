import { aHelping } from "../../../core/food/helping.ts";
import { notCountedWords, partWords, type PartWords } from "../../../core/food/part-words.ts";
import type { ValueParts } from "../../../core/food/value-parts.ts";

/** What each ingredient brings of a value, and from which food of which table that is known. */
export function PartsList({ parts: { nutrient, dish, parts, notCounted } }: { readonly parts: ValueParts }) {
  const left = notCountedWords(notCounted);
  return (
    <>
      <ul class="parts">
        {parts.map((part) => (
          <Part key={part.ingredient.id} part={partWords(nutrient, part)} helping={aHelping(dish)} />
        ))}
      </ul>
      {left !== null && <p>{left}</p>}
    </>
  );
}

function Part({ part, helping }: { readonly part: PartWords; readonly helping: string }) {
  const { item, amount, food, from, weighs, in100g, inAll, aServing, notes } = part;
  return (
    <li class="part">
      <span class="part-item">
        <b>{item}</b>, {amount}
      </span>
      <b class="part-figure">{in100g === null ? inAll : `${inAll} in all`}</b>
      <span class="part-source">
        {food === null ? (
          "Taken for no food of the table."
        ) : (
          <>
            Taken for {weighs !== null && `${weighs} of `}
            {food}, {from}.
          </>
        )}
        {in100g !== null && ` In 100 g ${in100g}; in ${helping} ${aServing}.`}
        {notes.map((note) => ` ${note}`)}
      </span>
    </li>
  );
}
