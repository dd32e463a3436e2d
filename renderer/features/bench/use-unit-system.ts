import { useCallback, useState } from "react";
import type { UnitSystem } from "#shared-lib/quantities.ts";

const storageName = "sillbook.units";

function stored(): UnitSystem {
  try {
    return localStorage.getItem(storageName) === "foot-pound" ? "foot-pound" : "metric";
  } catch {
    return "metric";
  }
}

/** The units this window shows; nothing stored or computed depends on them. */
export function useUnitSystem(): readonly [UnitSystem, () => void] {
  const [system, setSystem] = useState(stored);
  const toggle = useCallback(() => {
    setSystem((before) => {
      const next = before === "metric" ? "foot-pound" : "metric";
      try {
        localStorage.setItem(storageName, next);
      } catch {
        // A browser may forbid storage; the choice then holds for this window.
      }
      return next;
    });
  }, []);
  return [system, toggle];
}
