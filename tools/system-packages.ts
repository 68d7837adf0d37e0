import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { run } from "./run.ts";

/** Something the tests need from the operating system, and how one sees that it is there. */
export type SystemPackage = {
  /** The Debian package that brings it. */
  readonly name: string;
  readonly isThere: () => boolean;
};

/** The first of some commands that the PATH knows, as an absolute path; null where there is none. */
export function findCommand(...names: readonly string[]): string | null {
  const folders = (process.env["PATH"] ?? "").split(delimiter).filter((folder) => folder !== "");
  const paths = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return paths.find(isExecutable) ?? null;
}

/** Where Chromium is: the environment's CHROMIUM, else the first browser of its kind on the PATH; null for none. */
export function findChromium(): string | null {
  const named = process.env["CHROMIUM"];
  if (named !== undefined && named !== "") return isExecutable(named) ? named : null;
  return findCommand("chromium", "chromium-browser", "google-chrome");
}

const voices = "/usr/share/festival/voices";

/** The browser and a font, the voices that speak the test commands, and the human speech that must never act. */
export const testPackages: readonly SystemPackage[] = [
  { name: "chromium", isThere: () => findChromium() !== null },
  // Widths are measured on the screen: with one of the fonts that its styles name.
  { name: "fonts-liberation", isThere: () => existsSync("/usr/share/fonts/truetype/liberation") },
  { name: "flite", isThere: () => findCommand("flite") !== null },
  { name: "festival", isThere: () => findCommand("text2wave") !== null },
  { name: "festvox-us-slt-hts", isThere: () => existsSync(`${voices}/us/cmu_us_slt_arctic_hts`) },
  { name: "festvox-kallpc16k", isThere: () => existsSync(`${voices}/english/kal_diphone`) },
  { name: "festvox-kdlpc16k", isThere: () => existsSync(`${voices}/english/ked_diphone`) },
  { name: "sox", isThere: () => findCommand("sox") !== null },
  {
    name: "asterisk-core-sounds-it-wav",
    isThere: () => existsSync("/usr/share/asterisk/sounds/it_IT_m_Carlo"),
  },
  { name: "pocketsphinx-testdata", isThere: () => existsSync("/usr/share/pocketsphinx/test/data") },
];

/**
 * Installs what is missing through apt-get, where there is one and we may.
 * @returns null when everything is there, else one sentence: what is missing and what to do
 */
export async function installMissing(packages: readonly SystemPackage[]): Promise<string | null> {
  const missing = packages.filter((one) => !one.isThere()).map((one) => one.name);
  if (missing.length === 0) return null;
  const asRoot = await rootPrefix();
  if (asRoot !== null && findCommand("apt-get") !== null) {
    const [program, ...rest] = [...asRoot, "apt-get"];
    const quiet = { DEBIAN_FRONTEND: "noninteractive" };
    await run(program, [...rest, "update"], quiet);
    await run(program, [...rest, "install", "-y", "--no-install-recommends", ...missing], quiet);
  }
  const still = packages.filter((one) => !one.isThere()).map((one) => one.name);
  if (still.length === 0) return null;
  return (
    `The tests need ${still.join(", ")} and could not install that. ` +
    `On Debian run "sudo apt-get install ${still.join(" ")}"; elsewhere install the same programs, ` +
    "or set CHROMIUM to the path of a browser of that kind."
  );
}

/** What to put before a command that needs root: nothing for root itself; null where we may not. */
async function rootPrefix(): Promise<readonly string[] | null> {
  if (process.getuid?.() === 0) return [];
  return findCommand("sudo") !== null && (await run("sudo", ["-n", "true"])) === 0 ? ["sudo", "-n"] : null;
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false; // not there, or not ours to run: the same to us
  }
}
