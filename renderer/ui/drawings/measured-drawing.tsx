import type { ReactNode } from "react";
import "./drawings.css";
import type { MeasuredSize } from "./use-measured-width.ts";
import { useMeasuredWidth } from "./use-measured-width.ts";

/** The place a drawing stands in: measured first, then painted for exactly that width and text size. */
export function MeasuredDrawing(props: {
  readonly className?: string;
  readonly children: (size: MeasuredSize) => ReactNode;
}) {
  const { ref, size } = useMeasuredWidth();
  return (
    <figure className={props.className ? `drawing-place ${props.className}` : "drawing-place"} ref={ref}>
      <span className="drawing-probe" aria-hidden="true" />
      {size && size.width > 0 ? props.children(size) : null}
    </figure>
  );
}
