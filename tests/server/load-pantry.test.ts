import { mkdir, mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { loadPantry } from "../../server/pantry/load-pantry.ts";
import { BEAN_POT } from "../core/recipe/bean-pot.ts";

const folders: string[] = [];

async function folderWith(files: Readonly<Record<string, string>>): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "pantry-"));
  folders.push(folder);
  await mkdir(join(folder, "dishes"));
  for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
  return folder;
}

afterEach(async () => {
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true });
});

describe("a pantry on disk", () => {
  it("[R28] recipe files are read, other files and missing shelves are passed over", async () => {
    const folder = await folderWith({
      "dishes/bean-pot.yaml": BEAN_POT,
      "dishes/notes.txt": "dish: no",
      "README.md": "",
    });
    const { dishes, meals, mistakes } = await loadPantry(folder);
    expect([[...dishes.keys()], meals, mistakes]).toEqual([["bean-pot"], [], []]);
  });

  it("[R28] a file that cannot be opened is a mistake, and the others are there", async () => {
    const folder = await folderWith({ "dishes/bean-pot.yaml": BEAN_POT });
    await symlink(join(folder, "gone"), join(folder, "dishes/lost.yaml"));
    const { dishes, mistakes } = await loadPantry(folder);
    expect([...dishes.keys()]).toEqual(["bean-pot"]);
    expect(mistakes).toEqual([
      {
        file: "dishes/lost.yaml",
        line: 1,
        field: "",
        sentence: "This file cannot be read (ENOENT); check that it is there and that you may open it.",
      },
    ]);
  });

  it("[R28] a file of a megabyte and a file of no text are refused", async () => {
    const folder = await folderWith({ "dishes/huge.yaml": "# a remark\n".repeat(100_000) });
    await writeFile(join(folder, "dishes/noise.yaml"), new Uint8Array([0, 255, 254, 1, 0, 200]));
    const { mistakes } = await loadPantry(folder);
    expect(mistakes.map(({ file }) => file)).toEqual(["dishes/huge.yaml", "dishes/noise.yaml"]);
    expect(mistakes[0]?.sentence).toBe(
      "This file is far too long for a recipe; split it into dishes of their own.",
    );
  });

  it("[R28] the mark that some editors put before the text is not part of it", async () => {
    const folder = await folderWith({ "dishes/bean-pot.yaml": `\uFEFF${BEAN_POT.replaceAll("\n", "\r\n")}` });
    expect((await loadPantry(folder)).mistakes).toEqual([]);
  });
});
