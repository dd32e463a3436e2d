import { useId } from "react";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import { shaftSentence } from "#shared-lib/drawings/shaft-layout.ts";
import type {
  LandingState,
  ShaftChoice,
  ShaftMark,
  ShaftSectionLift,
} from "#shared-lib/drawings/shaft-section.ts";
import { switchesActuatedAt } from "#shared-lib/drawings/shaft-section.ts";
import { HatchPatterns, hatchesOf } from "./hatch-patterns.tsx";
import { ShaftCar, ShaftCounterweight, ShaftMachinery } from "./shaft-car.tsx";
import { ShaftBreaks, ShaftFabric, ShaftLevels, ShaftScaleBar } from "./shaft-fabric.tsx";
import { ShaftMarkClouds } from "./shaft-mark-clouds.tsx";
import { ShaftPartTargets } from "./shaft-part-targets.tsx";
import { ShaftRowHeads, ShaftRows } from "./shaft-rows.tsx";
import { ShaftSignals } from "./shaft-signals.tsx";
import { useCarControl } from "./use-car-control.ts";

export interface ShaftPictureProps {
  readonly lift: ShaftSectionLift;
  readonly layout: ShaftLayout;
  readonly marks: readonly ShaftMark[];
  readonly landingStates: Readonly<Record<string, LandingState>>;
  readonly carLevelMetres: number;
  readonly chosenLandingId?: string | undefined;
  readonly onCarMove?: ((levelMetres: number) => void) | undefined;
  readonly onChoose?: ((choice: ShaftChoice) => void) | undefined;
  /** Left out where the heads stand fixed above a scrolling section. */
  readonly withoutHeads?: boolean;
}

/** The shaft section painted for one layout. Paint order is what hides what: later things stand nearer. */
export function ShaftPicture(props: ShaftPictureProps) {
  const { lift, layout, marks, carLevelMetres: carLevel, landingStates: states, onChoose } = props;
  const id = useId();
  const hatches = hatchesOf(id);
  const { control, dragging } = useCarControl({ lift, layout, carLevel, onCarMove: props.onCarMove });
  const same = { layout, lift, carLevel };
  const standing = layout.marks.filter((mark) => !mark.onCar);
  const travelling = layout.marks.filter((mark) => mark.onCar);
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG cannot be a fieldset; its parts are pressed one by one.
    <svg
      className={dragging ? "d dragging" : "d"}
      width={layout.width}
      height={layout.height}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      role="group"
      aria-label={shaftSentence(lift, marks)}
    >
      <HatchPatterns id={id} />
      <ShaftFabric layout={layout} lift={lift} hatches={hatches} />
      <ShaftLevels layout={layout} lift={lift} />
      {props.withoutHeads ? null : <ShaftRowHeads layout={layout} />}
      <ShaftRows
        layout={layout}
        states={states}
        chosenLandingId={props.chosenLandingId}
        onChoose={onChoose}
      />
      <ShaftMachinery {...same} />
      <ShaftBreaks layout={layout} />
      <ShaftCounterweight {...same} />
      <ShaftCar {...same} control={control}>
        <ShaftMarkClouds textSize={layout.columns.textSize} marks={travelling} onChoose={onChoose} />
      </ShaftCar>
      <ShaftSignals
        layout={layout}
        lift={lift}
        states={states}
        actuated={switchesActuatedAt(lift, carLevel)}
      />
      <ShaftScaleBar layout={layout} />
      <ShaftPartTargets parts={layout.parts} onChoose={onChoose} />
      <ShaftMarkClouds textSize={layout.columns.textSize} marks={standing} onChoose={onChoose} />
    </svg>
  );
}
