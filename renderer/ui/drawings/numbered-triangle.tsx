import { trianglePath } from "#shared-lib/drawings/drawing-paths.ts";

/** The red pencil's number: the same one stands in front of the sentence that says what to do. */
export function NumberedTriangle(props: { readonly x: number; readonly y: number; readonly number: number }) {
  return (
    <g>
      <path className="pencil fillp" d={trianglePath(props.x, props.y)} />
      <text className="s c" x={props.x + 13} y={props.y + 19}>
        {props.number}
      </text>
    </g>
  );
}
