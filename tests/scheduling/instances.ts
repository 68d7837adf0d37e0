import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Network } from "../../core/plan/engine/network.ts";
import { instanceName, isInstanceFile, readInstance } from "./read-instances.ts";
import { readOptima, type Optimum } from "./read-optima.ts";

/** A public instance, and what its folder's table says of it. */
export interface Instance {
  readonly name: string;
  readonly network: Network;
  readonly optimum: Optimum | null;
}

/** A folder of instances; a complaint is a sentence about a file that could not be read. */
export interface InstanceSet {
  readonly instances: readonly Instance[];
  readonly complaints: readonly string[];
}

/**
 * Where the public instances lie, a folder a set: not in this repository, for they are others' work.
 * `SCHEDULING_INSTANCES` names another place. null: they are not on this machine.
 */
export function instancesFolder(): string | null {
  const asked = process.env["SCHEDULING_INSTANCES"];
  const folder = asked ?? fileURLToPath(new URL("../../../shared/data/scheduling", import.meta.url));
  return existsSync(folder) ? folder : null;
}

/** All instances of one folder, in the order of their names, with the optima of its `optimum.csv`, if any. */
export function readSet(folder: string): InstanceSet {
  const table = join(folder, "optimum.csv");
  const read = existsSync(table) ? readOptima(table, readFileSync(table, "utf8")) : null;
  const optima = read?.ok === true ? read.value : new Map<string, Optimum>();
  const complaints = read?.ok === false ? [read.error] : [];
  const instances: Instance[] = [];
  for (const file of readdirSync(folder).filter(isInstanceFile).sort()) {
    const network = readInstance(file, readFileSync(join(folder, file), "utf8"));
    const name = instanceName(file);
    if (network.ok) instances.push({ name, network: network.value, optimum: optima.get(name) ?? null });
    else complaints.push(network.error);
  }
  return { instances, complaints };
}
