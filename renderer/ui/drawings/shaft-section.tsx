import { useMemo, useState } from "react";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import { scrollAbove, shaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type {
  LandingState,
  ShaftChoice,
  ShaftMark,
  ShaftSectionLift,
} from "#shared-lib/drawings/shaft-section.ts";
import { carValueText, notRecorded } from "#shared-lib/drawings/shaft-section.ts";
import { MeasuredDrawing } from "./measured-drawing.tsx";
import { ShaftPicture } from "./shaft-picture.tsx";
import { ShaftScroll } from "./shaft-scroll.tsx";
import type { TitleBlockWords } from "./title-block.tsx";
import { TitleBlock } from "./title-block.tsx";
import type { MeasuredSize } from "./use-measured-width.ts";

export interface ShaftSectionProps {
  readonly lift: ShaftSectionLift;
  readonly marks: readonly ShaftMark[];
  /** By landing id; a landing that is not in it is unchecked. */
  readonly landingStates: Readonly<Record<string, LandingState>>;
  readonly carLevelMetres: number;
  /** Left out: the car stands still and is no control. */
  readonly onCarMove?: (levelMetres: number) => void;
  /** Left out: nothing can be pressed. */
  readonly onChoose?: (choice: ShaftChoice) => void;
  readonly chosenLandingId?: string;
  /** Pixels of one screen for the picture; the usual 560 suits 1280 x 800. */
  readonly availableHeight?: number;
  /** For paper: true scale, frame and title block. The scale is chosen and written by the drawing. */
  readonly print?: Omit<TitleBlockWords, "scale">;
}

const usualHeight = 560;
/** A4 upright less margins, frame and title block, in pixels of 1/96 inch. */
const paperHeight = 800;
/** Pixels that the printed frame, and the strip with a scroll bar, take from the width. */
const sheetFrame = 34;
const stripAndScrollbar = 56;

/** The lift's picture: computed from the width it gets and from the text size. */
export function ShaftSection(props: ShaftSectionProps) {
  return (
    <MeasuredDrawing className="shaft">{(size) => <SizedShaft {...props} size={size} />}</MeasuredDrawing>
  );
}

function SizedShaft(props: ShaftSectionProps & { readonly size: MeasuredSize }) {
  const { lift, marks, size, print } = props;
  const availableHeight = print ? paperHeight : (props.availableHeight ?? usualHeight);
  const takenWidth = print ? sheetFrame : lift.landings.length > scrollAbove ? stripAndScrollbar : 0;
  const [parkedLevelMetres] = useState(props.carLevelMetres);
  const layout = useMemo(
    () =>
      shaftLayout(lift, {
        width: size.width - takenWidth,
        textSize: size.textSize,
        availableHeight,
        marks,
        parkedLevelMetres,
        print: print !== undefined,
      }),
    [lift, marks, takenWidth, size.width, size.textSize, availableHeight, parkedLevelMetres, print],
  );
  if (print) return <PrintedShaft {...props} layout={layout} print={print} />;
  return (
    <>
      {layout.scrolls ? (
        <ShaftScroll {...props} layout={layout} height={availableHeight} />
      ) : (
        <div className="drawing-frame">
          <ShaftPicture {...props} layout={layout} />
        </div>
      )}
      <ShaftWords {...props} />
    </>
  );
}

/** Below the picture: what the car's place does to the sensors, and what the drawing had to leave out. */
function ShaftWords({ lift, carLevelMetres }: ShaftSectionProps) {
  const missing = notRecorded(lift);
  return (
    <figcaption>
      {lift.landings.length > 0 ? (
        <p className="drawing-words">Car at {carValueText(lift, carLevelMetres)}.</p>
      ) : (
        <p className="drawing-words">No landing is recorded yet, so there is nothing to draw to scale.</p>
      )}
      {missing.length > 0 ? (
        <p className="drawing-words soft">
          Not recorded, so not drawn to scale or left out: {missing.join(", ")}.
        </p>
      ) : null}
    </figcaption>
  );
}

interface PrintedProps extends ShaftSectionProps {
  readonly layout: ShaftLayout;
  readonly print: Omit<TitleBlockWords, "scale">;
}

function PrintedShaft(props: PrintedProps) {
  const { layout, print, lift, marks, landingStates, carLevelMetres } = props;
  const cuts = layout.heights.breaks.length > 0 ? ", blind run cut" : "";
  return (
    <div className="drawing-sheet">
      <ShaftPicture
        lift={lift}
        marks={marks}
        landingStates={landingStates}
        carLevelMetres={carLevelMetres}
        layout={layout}
      />
      <MarkWords marks={marks} />
      <ShaftWords {...props} />
      <TitleBlock {...print} scale={`Heights 1:${layout.paperRatio}${cuts}. Widths at their own scale.`} />
    </div>
  );
}

function MarkWords({ marks }: { readonly marks: readonly ShaftMark[] }) {
  const ordered = [...marks].sort((a, b) => a.number - b.number);
  return ordered.map((mark) => (
    <p className="drawing-words" key={mark.id}>
      <b>{mark.number}</b> {mark.words}
    </p>
  ));
}
