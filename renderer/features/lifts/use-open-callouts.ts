import { useEffect, useState } from "react";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { request } from "../../shell-client.ts";
import { useRead } from "../../use-read.ts";
import type { OpenCallout } from "./lift-drawing.ts";

export interface OpenCallouts {
  readonly lines: readonly CalloutLine[];
  /** The same callouts with the landing they are about. */
  readonly placed: readonly OpenCallout[];
}

/** The open callouts of a lift. A line does not say the landing, so each of the few open ones is asked for it. */
export function useOpenCallouts(liftId: string): OpenCallouts {
  const read = useRead("callout.list", { filter: { liftId, open: true }, limit: 50 });
  const lines = read.value?.callouts ?? noLines;
  const [placed, setPlaced] = useState<readonly OpenCallout[]>([]);
  useEffect(() => {
    let overtaken = false;
    const ask = async (line: CalloutLine): Promise<OpenCallout> => {
      const { callout } = await request("callout.find", { id: line.id });
      const { id, number, said, group, landingId, inside } = callout;
      const peopleInside = inside === "people inside" && !line.made.includes("people released");
      return { id, number, said, group, landingId, inside, peopleInside };
    };
    Promise.all(lines.map(ask)).then(
      (found) => {
        if (!overtaken) setPlaced(found);
      },
      // The list beside the drawing still shows the callout; the next change asks again.
      () => {},
    );
    return () => {
      overtaken = true;
    };
  }, [lines]);
  return { lines, placed };
}

const noLines: readonly CalloutLine[] = [];
