interface TriangleShapeProps {
  readonly number: number;
  /** Centre of the triangle in the drawing's units. */
  readonly x?: number;
  readonly y?: number;
}

/** The numbered triangle inside a drawing (an svg with class "drawing"). */
export function TriangleShape({ number, x = 0, y = 0 }: TriangleShapeProps) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path className="pen-pencil fill-sheet" d="M0 -12L13 10H-13Z" />
      <text className="letter-pencil letter-centre" x="0" y="7">
        {number}
      </text>
    </g>
  );
}

/** The numbered triangle before a sentence that says what to do. The same number stands at its place on the drawing. */
export function TriangleNumber({ number }: { readonly number: number }) {
  return (
    <svg className="drawing triangle-number" viewBox="-14 -14 28 26" role="img" aria-label={`${number}:`}>
      <TriangleShape number={number} />
    </svg>
  );
}
