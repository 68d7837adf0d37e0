import { useEffect, useState } from "preact/hooks";
import type { MisheardRecord } from "../../kitchen/misheard-model.ts";

/** The record, read anew whenever somebody begins to look at it. */
export type OpenedRecord = MisheardRecord | "opening" | "failed";

/** Opens the record. @param open the same function at every call */
export function useRecord(open: () => Promise<MisheardRecord>): OpenedRecord {
  const [record, setRecord] = useState<OpenedRecord>("opening");
  useEffect(() => {
    let isOpen = true;
    const read = async (): Promise<OpenedRecord> => {
      const opened = await open();
      await opened.refresh();
      return opened;
    };
    read().then(
      (opened) => isOpen && setRecord(opened),
      () => isOpen && setRecord("failed"),
    );
    return () => {
      isOpen = false;
    };
  }, [open]);
  return record;
}
