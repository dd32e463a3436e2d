import type { ReactNode } from "react";
import { TriangleNumber } from "./triangle-number.tsx";

interface RuledTitleProps {
  readonly children: ReactNode;
  /** "3" or "2 of 5". */
  readonly count?: ReactNode;
  /** Number of the red-pencil triangle before the title. */
  readonly number?: number;
  readonly level?: 2 | 3;
  /** Words at the right end of the line. */
  readonly aside?: ReactNode;
  readonly id?: string;
}

/** A title on a dimension line with an oblique tick at both ends. */
export function RuledTitle({ children, count, number, level = 2, aside, id }: RuledTitleProps) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <div className="ruled ruled-line">
      <Heading className="ruled-title" {...(id === undefined ? {} : { id })}>
        {number !== undefined && <TriangleNumber number={number} />}
        <span>
          {children}
          {count !== undefined && <span className="ruled-count"> {count}</span>}
        </span>
      </Heading>
      {aside}
    </div>
  );
}
