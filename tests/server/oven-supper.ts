import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const files: Readonly<Record<string, string>> = {
  "kitchens/one-oven.yaml": `kitchen: One oven
burners: 2
ovens:
  oven: { racks: 2, heats: 20 F a minute, cools: 10 F a minute, hottest: 500 F }
`,
  "dishes/bread.yaml": `dish: Bread
about: A loaf for tests.
yield: 4 slices
ingredients:
  dough: 2 cups
steps:
  shape-the-bread:
    do: Shape the dough.
    with: dough
    time: 5 min
  bake-the-bread:
    do: Put the loaf into the oven.
    hands: off
    time: 20 min
    needs: { oven: 450 F }
    after: shape-the-bread
`,
  "dishes/custard.yaml": `dish: Custard
about: A custard for tests.
yield: 4 cups
ingredients:
  milk: 2 cups
steps:
  whisk-the-custard:
    do: Whisk the milk.
    with: milk
    time: 4 min
  bake-the-custard:
    do: Put the custard into the oven.
    hands: off
    time: 30 min
    needs: { oven: 300 F }
    after: whisk-the-custard
`,
  "meals/oven-supper.yaml": `meal: Oven Supper
about: Two dishes that cannot share one heat.
kitchen: one-oven
dishes:
  bread: 4
  custard: 4
`,
};

/** Writes a meal whose two dishes have to take turns in the oven. @returns the path of its file */
export function ovenSupper(folder: string): string {
  for (const [name, text] of Object.entries(files)) {
    const path = join(folder, "pantry", name);
    mkdirSync(join(path, ".."), { recursive: true });
    writeFileSync(path, text);
  }
  return join(folder, "pantry", "meals", "oven-supper.yaml");
}
