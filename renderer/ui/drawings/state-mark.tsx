import type { CheckState } from "#shared-lib/drawings/shaft-section.ts";
import { unread } from "./unread.ts";

/** The program's two sills, on a drawing: flush passed, stepped failed, second one broken unchecked. 20 x 20, or as large as the text needs. */
export function StateMark(props: {
  readonly state: CheckState;
  readonly x: number;
  readonly y: number;
  readonly size?: number;
}) {
  return (
    <g
      className="state-mark"
      transform={`translate(${props.x} ${props.y}) scale(${(props.size ?? 20) / 20})`}
      {...unread}
    >
      <StatePaths state={props.state} />
    </g>
  );
}

function StatePaths(props: { readonly state: CheckState }) {
  if (props.state === "passed") return <path className="sill" d="M1 10H8.5M11.5 10H19" />;
  if (props.state === "failed") {
    return (
      <>
        <path className="sill pencil" d="M1 5H9M11 15H19" />
        <path className="riser pencil" d="M10 5V15" />
      </>
    );
  }
  return <path className="sill" d="M1 10H8.5M11.5 10H13.5M15 10H16.6M18 10H19.4" />;
}
