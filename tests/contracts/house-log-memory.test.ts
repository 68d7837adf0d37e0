import { describe } from "vitest";
import { MemoryHouseStore } from "../../server/store/memory-house-store.ts";
import { houseLogContract } from "./house-log.ts";

describe("the household log in memory", () => {
  houseLogContract(() => new MemoryHouseStore());
});
