import type { FunctionComponent } from "preact";
import { useMemo } from "preact/hooks";
import type { Session } from "../../../core/cook/session.ts";
import { onTheTable } from "../../../core/talk/on-the-table.ts";
import type { Galley } from "../galley.ts";
import { useLazy } from "../parts/use-lazy.ts";
import type { ValuesProps } from "./values-props.ts";

const load = async (): Promise<FunctionComponent<ValuesProps>> =>
  (await import("./food-values.tsx")).FoodValues;

/** What is in what comes to the table now. Its code comes after the drawer: it adds up and checks a whole meal. */
export function LazyValues({ galley, session }: { readonly galley: Galley; readonly session: Session }) {
  const loaded = useLazy(load, galley.store.link.value);
  // Most events change nothing of the food; only what does is reckoned anew.
  const comes = onTheTable(session)
    .dishes.map(({ id }) => id)
    .join(" ");
  const meal = useMemo(() => {
    const dishes = session.meal.dishes.filter(({ id }) => comes.split(" ").includes(id));
    return { ...session.meal, dishes };
  }, [session.meal, comes]);
  if (loaded.state === "here") return <loaded.Inside galley={galley} meal={meal} />;
  return (
    <p role="status">
      {loaded.state === "loading" ? "Adding up." : "What is in it cannot be told while the server is away."}
    </p>
  );
}
