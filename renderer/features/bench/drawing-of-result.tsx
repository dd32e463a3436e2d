import type { ReactNode } from "react";
import type { Drawing } from "#shared-lib/calculators/drawing.ts";
import type { UnitSystem } from "#shared-lib/quantities.ts";
import { ChartFrame } from "../../ui/chart-frame.tsx";
import { Curve } from "../../ui/drawings/curve.tsx";
import { LandingDetail } from "../../ui/drawings/landing-detail.tsx";
import { SensorsAndMagnet } from "../../ui/drawings/sensors-and-magnet.tsx";
import { TimeSignals } from "../../ui/drawings/time-signals.tsx";
import { BusLine } from "./bus-line.tsx";
import { curveCaption, curveInput } from "./curve-input.ts";
import { figureTable } from "./drawing-table.ts";
import { type EdgeOrderDrawing, edgePanels } from "./edge-signals.ts";
import { FigureTableView } from "./figure-table-view.tsx";
import { Groove } from "./groove.tsx";
import { SlowdownRange } from "./slowdown-range.tsx";
import { ZoneBars } from "./zone-bars.tsx";
import { landingDetail, type MagnetDrawing, type ZoneBarsDrawing, zoneTogether } from "./zone-pictures.ts";

/** The drawings of an earlier result and the words that tell it on a picture: "4 Feb 2026". */
export interface EarlierDrawings {
  readonly drawings: readonly Drawing[];
  readonly words: string;
}

interface DrawingsProps {
  readonly drawings: readonly Drawing[];
  readonly system: UnitSystem;
  /** "level 3, +8.80 m" */
  readonly levelWords: string;
  readonly earlier?: EarlierDrawings | undefined;
  readonly fileName: string;
  /** On the printed record: the detail beside the whole picture is left out. */
  readonly compact?: boolean;
}

type OfKind<Kind extends Drawing["kind"]> = Extract<Drawing, { kind: Kind }>;

function ofKind<Kind extends Drawing["kind"]>(
  drawings: readonly Drawing[],
  kind: Kind,
): readonly OfKind<Kind>[] {
  return drawings.filter((drawing): drawing is OfKind<Kind> => drawing.kind === kind);
}

/** Each drawing with its place among those of its kind. */
function numbered(drawings: readonly Drawing[]): readonly { drawing: Drawing; place: number }[] {
  return drawings.map((drawing) => ({ drawing, place: ofKind(drawings, drawing.kind).indexOf(drawing) }));
}

/** Everything a result asks to have drawn, one under the other. */
export function DrawingsOfResult(props: DrawingsProps) {
  const { drawings } = props;
  const bars = ofKind(drawings, "zone-bars")[0];
  const magnet = ofKind(drawings, "magnet-detail")[0];
  return (
    <div className="bench-drawings">
      <ZoneDrawings {...props} bars={bars} magnet={magnet} />
      {numbered(drawings).map(({ drawing, place }) => (
        <OneDrawing key={`${drawing.kind} ${place}`} {...props} drawing={drawing} place={place} />
      ))}
    </div>
  );
}

interface FramedProps extends Pick<DrawingsProps, "system" | "fileName"> {
  readonly drawing: Drawing;
  readonly title?: string;
  readonly caption: ReactNode;
  readonly children: ReactNode;
}

function Framed({ drawing, title, caption, system, fileName, children }: FramedProps) {
  const table = figureTable(drawing, system);
  return (
    <ChartFrame
      title={title ?? drawing.title}
      caption={caption}
      fileName={`${fileName}-${drawing.kind}`}
      {...(table === null ? {} : { table: <FigureTableView label={drawing.title} table={table} /> })}
    >
      {children}
    </ChartFrame>
  );
}

interface OneProps extends DrawingsProps {
  readonly drawing: Drawing;
  /** Which one of its kind, to find the same one of the earlier result. */
  readonly place: number;
}

function OneDrawing({ drawing, place, system, earlier, fileName }: OneProps) {
  const frame = { drawing, system, fileName };
  switch (drawing.kind) {
    case "curve": {
      const before = ofKind(earlier?.drawings ?? [], "curve")[place];
      const past =
        before !== undefined && earlier !== undefined && before.x.unit === drawing.x.unit
          ? { drawing: before, words: earlier.words }
          : undefined;
      return (
        <Framed {...frame} fileName={`${fileName}-${place + 1}`} caption={curveCaption(drawing)}>
          <Curve {...curveInput(drawing, system, past)} label={drawing.title} />
        </Framed>
      );
    }
    case "slowdown-range":
      return (
        <Framed {...frame} caption="Hatched: where the switch may act. To scale along the well.">
          <SlowdownRange drawing={drawing} system={system} />
        </Framed>
      );
    case "bus-line":
      return (
        <Framed {...frame} caption={`By the reading: ${drawing.words}. Not to scale.`}>
          <BusLine drawing={drawing} system={system} />
        </Framed>
      );
    case "groove":
      return (
        <Framed {...frame} caption="In section, angles to scale. Heavy: where the rope bears.">
          <Groove drawing={drawing} system={system} />
        </Framed>
      );
    case "edge-order":
      return <EdgeOrder drawing={drawing} system={system} fileName={fileName} />;
    case "zone-bars":
    case "magnet-detail":
      return null;
  }
}

interface EdgeOrderProps extends Pick<DrawingsProps, "system" | "fileName"> {
  readonly drawing: EdgeOrderDrawing;
}

function EdgeOrder({ drawing, system, fileName }: EdgeOrderProps) {
  const findings = drawing.runs.map((run) => `Moving ${run.direction}: ${run.word}.`).join(" ");
  return (
    <Framed
      drawing={drawing}
      system={system}
      fileName={fileName}
      caption={`${findings} Drawn by order alone: one step for each edge, no time.`}
    >
      <div className="stack">
        {drawing.runs.map((run) => (
          <TimeSignals key={run.direction} {...edgePanels(run)} />
        ))}
      </div>
    </Framed>
  );
}

interface ZoneProps extends DrawingsProps {
  readonly bars: ZoneBarsDrawing | undefined;
  readonly magnet: MagnetDrawing | undefined;
}

const zoneCaption =
  "Filled: the signal that unlocks. Hatched: either signal. Dashed blue: the nominal place. Dimensions in mm.";

function ZoneDrawings(props: ZoneProps) {
  const { bars, magnet, system, levelWords, earlier, fileName } = props;
  const together = zoneTogether(bars, magnet, levelWords);
  const before = ofKind(earlier?.drawings ?? [], "magnet-detail")[0];
  const past = before && earlier ? { drawing: before, words: `place on ${earlier.words}` } : undefined;
  const detail = magnet === undefined ? null : landingDetail(magnet, levelWords, past);
  const showsDetail =
    detail !== null && (together === null || (past !== undefined && props.compact !== true));
  const place = magnet === undefined || magnet.landing === "" ? "Zone" : `Zone at landing ${magnet.landing}`;
  return (
    <>
      {together !== null && bars !== undefined && magnet !== undefined && (
        <Framed
          drawing={bars}
          system={system}
          fileName={fileName}
          title={`${place}: ${magnet.offsetWords}`}
          caption={zoneCaption}
        >
          <SensorsAndMagnet {...together} />
        </Framed>
      )}
      {together === null && bars !== undefined && (
        <Framed
          drawing={bars}
          system={system}
          fileName={fileName}
          caption={
            magnet?.sensorsOn === "well"
              ? `Sensors in the well, magnet on the car. ${place}: ${magnet.offsetWords}.`
              : "Filled: the signal that unlocks, where it is entered."
          }
        >
          <ZoneBars drawing={bars} system={system} />
        </Framed>
      )}
      {showsDetail && magnet !== undefined && (
        <Framed
          drawing={magnet}
          system={system}
          fileName={fileName}
          title={past === undefined ? `${place}: ${magnet.offsetWords}` : `${place}: now and ${past.words}`}
          caption={past === undefined ? "" : "Blue: the place found then."}
        >
          <LandingDetail {...detail} />
        </Framed>
      )}
    </>
  );
}
