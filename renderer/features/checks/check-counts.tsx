import { Mark } from "../../ui/mark.tsx";
import type { VerdictCounts } from "./step-groups.ts";

/** Passed, failed and unchecked with marks and words; what there is none of is left out. */
export function CheckCounts({ passed, failed, unchecked }: VerdictCounts) {
  return (
    <span className="row check-counts">
      {passed > 0 && <Mark kind="flush" word={`${passed} passed`} />}
      {failed > 0 && <Mark kind="stepped" word={`${failed} failed`} pencil strong />}
      {unchecked > 0 && <Mark kind="unchecked" word={`${unchecked} unchecked`} />}
    </span>
  );
}
