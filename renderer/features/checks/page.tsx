import { useSearch } from "@tanstack/react-router";
import { useState } from "react";
import { PageTitle } from "../../ui/page-title.tsx";
import { readChecksAddress } from "./check-address.ts";
import { CheckList } from "./check-list.tsx";
import { OpenBridges } from "./open-bridges.tsx";
import { StartCheck } from "./start-check.tsx";
import "./checks.css";

/** Signal checks of every lift, unfinished ones on top; beside them the start of a new one and the open bridges. */
export function ChecksPage() {
  const address = readChecksAddress(useSearch({ strict: false }));
  const [liftId, setLiftId] = useState(address.lift);
  return (
    <>
      <PageTitle title="Checks" />
      <div className="checks-columns">
        <div className="stack">
          <CheckList liftId={liftId} />
        </div>
        <div className="stack">
          <StartCheck
            key={`${address.lift} ${address.plan} ${address.callout} ${address.visit}`}
            address={address}
            onLift={setLiftId}
          />
          <OpenBridges />
        </div>
      </div>
    </>
  );
}
