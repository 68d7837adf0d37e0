import { useEffect, useState } from "preact/hooks";
import type { MealRequest } from "../../../core/sync/meal-request.ts";
import type { Pantry } from "../../../core/sync/protocol.ts";
import { BuyingDoor } from "../buying/buying-door.tsx";
import type { Shopping } from "../buying/buying-props.ts";
import type { Galley } from "../galley.ts";
import { Notices } from "../notices.tsx";
import { Fridge } from "../left/fridge.tsx";
import { UseFirst } from "../left/use-first.tsx";
import { Cautions } from "./cautions.tsx";
import { MisheardDoor } from "../misheard/misheard-door.tsx";
import { LookKeys } from "../parts/look-keys.tsx";
import { ValuesDoor } from "../values/values-door.tsx";
import { MealCard } from "./meal-card.tsx";
import { Mistakes } from "./mistakes.tsx";

type Shelf =
  | { readonly state: "loading" }
  | { readonly state: "failed" }
  | { readonly state: "open"; readonly pantry: Pantry };

/** What are we cooking? The first touch picks a meal, the second lights the stove. */
export function StartPage({ galley }: { readonly galley: Galley }) {
  const { store } = galley;
  const [shelf, setShelf] = useState<Shelf>({ state: "loading" });
  const [picked, setPicked] = useState<string | null>(null);
  const [shopping, setShopping] = useState<Shopping | null>(null);
  const [looking, setLooking] = useState<MealRequest | null>(null);
  const link = store.link.value;
  useEffect(() => {
    let isCurrent = true;
    store.pantry().then(
      (pantry) => isCurrent && setShelf({ state: "open", pantry }),
      // What was read before is still good to look at.
      () => isCurrent && setShelf((before) => (before.state === "open" ? before : { state: "failed" })),
    );
    return () => {
      isCurrent = false;
    };
  }, [store, link]);
  useEffect(() => {
    document.title = "What are we cooking?";
  }, []);
  return (
    <div class="start">
      <header>
        <h1>What are we cooking?</h1>
      </header>
      <Notices galley={galley} />
      <UseFirst galley={galley} />
      <main class="start-main">
        {shelf.state === "loading" && <p role="status">Reading the recipes.</p>}
        {shelf.state === "failed" && (
          <p role="status">
            The recipes cannot be read while the server is away. This page looks again as soon as it is there.
          </p>
        )}
        {shelf.state === "open" && (
          <Meals
            shelf={shelf.pantry}
            galley={galley}
            picked={picked}
            onPick={setPicked}
            onShop={(meal) => setShopping({ for: "meal", meal })}
            onLook={setLooking}
          />
        )}
      </main>
      <Fridge galley={galley} />
      {shelf.state === "open" && <Mistakes mistakes={shelf.pantry.mistakes} />}
      <BuyingDoor
        galley={galley}
        meals={shelf.state === "open" ? shelf.pantry.meals : []}
        shopping={shopping}
        onShopping={setShopping}
      />
      {looking !== null && <ValuesDoor galley={galley} wanted={looking} onClose={() => setLooking(null)} />}
      <MisheardDoor galley={galley} />
      <section class="start-look" aria-label="The look">
        <LookKeys settings={galley.settings} />
      </section>
      <Cautions />
    </div>
  );
}

interface MealsProps {
  readonly shelf: Pantry;
  readonly galley: Galley;
  readonly picked: string | null;
  readonly onPick: (meal: string | null) => void;
  readonly onShop: (meal: MealRequest) => void;
  readonly onLook: (meal: MealRequest) => void;
}

function Meals({ shelf, galley, picked, onPick, onShop, onLook }: MealsProps) {
  if (shelf.meals.length === 0) {
    return (
      <p class="empty">
        There is no meal to cook yet. Put a meal into recipes/meals and its dishes into recipes/dishes, then
        load this page again.
      </p>
    );
  }
  return (
    <ul class="meals">
      {shelf.meals.map((meal) => (
        <MealCard
          key={meal.id}
          meal={meal}
          galley={galley}
          isPicked={meal.id === picked}
          onShop={(wanted) => onShop({ meal: meal.id, ...wanted })}
          onLook={(wanted) => onLook({ meal: meal.id, ...wanted })}
          onPick={() => {
            onPick(meal.id === picked ? null : meal.id);
            // While the cook looks at servings and time: the second touch then finds it loaded.
            void galley.ear.prepare();
          }}
        />
      ))}
    </ul>
  );
}
