import { useEffect, useState } from "preact/hooks";
import type { BuyingDesk } from "../../kitchen/buying-model.ts";

/** The buying list of this device; null until it is here, and where it cannot be fetched. */
export function useDesk(open: () => Promise<BuyingDesk>, occasion: string): BuyingDesk | null {
  const [desk, setDesk] = useState<BuyingDesk | null>(null);
  useEffect(() => {
    let isOpen = true;
    open().then(
      (opened) => isOpen && setDesk(opened),
      () => undefined,
    );
    return () => {
      isOpen = false;
    };
  }, [open, occasion]);
  return desk;
}
