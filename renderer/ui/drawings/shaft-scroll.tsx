import type { MouseEvent } from "react";
import { useEffect, useRef, useState } from "react";
import { trianglePath } from "#shared-lib/drawings/drawing-paths.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { ShaftPictureProps } from "./shaft-picture.tsx";
import { ShaftPicture } from "./shaft-picture.tsx";
import { ShaftRowHeads } from "./shaft-rows.tsx";

interface ScrollProps extends ShaftPictureProps {
  readonly height: number;
}

const stripWidth = 24;

/** More than 24 landings: the section scrolls in its own frame, the whole well stands beside it as a strip. */
export function ShaftScroll(props: ScrollProps) {
  const { layout, height, carLevelMetres } = props;
  const scroller = useRef<HTMLElement>(null);
  const [top, setTop] = useState(0);
  const carY = layout.heights.yOf(carLevelMetres);

  // A car moved by keys must not leave the frame; where it is already seen, nothing scrolls.
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const margin = 60;
    const seen =
      carY > element.scrollTop + margin && carY < element.scrollTop + element.clientHeight - margin / 2;
    if (!seen) element.scrollTop = carY - element.clientHeight / 2;
  }, [carY]);

  const goTo = (share: number) => {
    const element = scroller.current;
    if (element) element.scrollTop = share * layout.height - element.clientHeight / 2;
  };
  const headHeight = layout.columns.textSize * 1.6;
  return (
    <div className="shaft-tall">
      <svg className="d shaft-head" width={layout.width} height={headHeight} aria-hidden="true">
        <ShaftRowHeads layout={{ ...layout, headBaseline: layout.columns.textSize * 1.1 }} />
      </svg>
      <ShaftStrip layout={layout} height={height} carY={carY} top={top} onGoTo={goTo} />
      <section
        className="shaft-scroll"
        ref={scroller}
        style={{ height }}
        aria-label="Shaft section, scrolls"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard.
        tabIndex={0}
        onScroll={(event) => setTop(event.currentTarget.scrollTop)}
      >
        <ShaftPicture {...props} withoutHeads />
      </section>
    </div>
  );
}

interface StripProps {
  readonly layout: ShaftLayout;
  readonly height: number;
  readonly carY: number;
  readonly top: number;
  readonly onGoTo: (share: number) => void;
}

/** The whole well in 24 px: landings as short lines, the car, marks, and a frame round what is seen beside it. */
function ShaftStrip({ layout, height, carY, top, onGoTo }: StripProps) {
  const scale = (height - 4) / layout.height;
  const at = (y: number) => 2 + y * scale;
  const well = {
    x: 5,
    y: at(layout.heights.roofY),
    width: 14,
    height: (layout.heights.pitFloorY - layout.heights.roofY) * scale,
  };
  const press = (event: MouseEvent<SVGSVGElement>) => {
    onGoTo((event.clientY - event.currentTarget.getBoundingClientRect().top - 2) / (height - 4));
  };
  return (
    <svg className="d shaft-strip" width={stripWidth} height={height} aria-hidden="true" onClick={press}>
      <rect className="hit" x={0} y={0} width={stripWidth} height={height} />
      <rect {...well} />
      {layout.rows.map((row) => (
        <path key={row.landing.id} className="thin" d={`M13 ${at(row.sillY)}H23`} />
      ))}
      <rect className="filled" x={8} y={at(carY) - 9} width={8} height={9} />
      {layout.marks
        .filter((mark) => !mark.onCar)
        .map((mark) => (
          <path
            key={mark.triangles[0]?.mark.id}
            className="pencil fillp"
            transform={`translate(0 ${at(mark.cloud.y + mark.cloud.height / 2) - 6}) `}
            d={trianglePath(0, 0, 6.5)}
          />
        ))}
      <rect className="thin" x={1} y={at(top)} width={stripWidth - 2} height={height * scale} />
    </svg>
  );
}
