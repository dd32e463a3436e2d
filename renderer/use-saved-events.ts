import { useEffect } from "react";
import { anyEntity } from "#shared-lib/contract/operation.ts";
import { onConnectionChange, onProgramEvent } from "./shell-client.ts";
import { connectionChanged, savedElsewhere } from "./use-saved-state.ts";

/** Follows what other windows saved and whether the program answers; the foot of the column shows both. */
export function useSavedEvents(): void {
  useEffect(() => {
    const endEvents = onProgramEvent((event) => {
      if (event.kind === "changed" && !event.records.some((record) => record.entity === anyEntity)) {
        savedElsewhere(event.at);
      }
    });
    const endConnection = onConnectionChange(connectionChanged);
    return () => {
      endEvents();
      endConnection();
    };
  }, []);
}
