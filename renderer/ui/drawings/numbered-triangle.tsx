import { trianglePath, triangleSize } from "#shared-lib/drawings/drawing-paths.ts";

interface TriangleProps {
  readonly x: number;
  readonly y: number;
  readonly number: number;
  readonly textSize: number;
}

/** The red pencil's number: the same one stands in front of the sentence that says what to do. */
export function NumberedTriangle({ x, y, number, textSize }: TriangleProps) {
  const { width, height } = triangleSize(textSize);
  return (
    <g>
      <path className="pencil fillp" d={trianglePath(x, y, textSize)} />
      <text className="s c" x={x + width / 2} y={y + height * 0.87}>
        {number}
      </text>
    </g>
  );
}
