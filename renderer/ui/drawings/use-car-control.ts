import type { KeyboardEvent, PointerEvent } from "react";
import { useRef, useState } from "react";
import { carRange, draggedLevel, landingTyped, levelAfterKey } from "#shared-lib/drawings/car-moves.ts";
import type { ShaftLayout } from "#shared-lib/drawings/shaft-layout.ts";
import type { ShaftSectionLift } from "#shared-lib/drawings/shaft-section.ts";
import type { CarControl } from "./shaft-car.tsx";

/** Digits typed within this time belong together: 1, 2 is landing 12. */
const typingMilliseconds = 900;
/** A dragged car rests on a sill that is nearer than this. */
const snapPixels = 3;

interface CarControlInput {
  readonly lift: ShaftSectionLift;
  readonly layout: ShaftLayout;
  readonly carLevel: number;
  readonly onCarMove?: ((levelMetres: number) => void) | undefined;
}

/** Pointer and keys of the car. The level itself belongs to the caller; this only asks for another one. */
export function useCarControl({ lift, layout, carLevel, onCarMove }: CarControlInput): {
  control: CarControl | null;
  dragging: boolean;
} {
  const [dragging, setDragging] = useState(false);
  const grip = useRef(0);
  const typed = useRef({ text: "", at: 0 });
  if (!onCarMove) return { control: null, dragging: false };

  const heightIn = (event: PointerEvent<SVGGElement>) =>
    event.clientY - (event.currentTarget.ownerSVGElement?.getBoundingClientRect().top ?? 0);
  const typedLevel = (key: string): number | null => {
    if (!/^[\p{L}\p{N}]$/u.test(key)) return null;
    const now = performance.now();
    const text = now - typed.current.at < typingMilliseconds ? typed.current.text + key : key;
    const landing = landingTyped(lift, text) ?? landingTyped(lift, key);
    typed.current = { text: landingTyped(lift, text) ? text : key, at: now };
    return landing?.levelMetres ?? null;
  };
  const control: CarControl = {
    range: carRange(lift),
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      grip.current = heightIn(event) - layout.heights.yOf(carLevel);
      setDragging(true);
    },
    onPointerMove: (event) => {
      if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
      const level = layout.heights.levelOf(heightIn(event) - grip.current);
      onCarMove(draggedLevel(lift, level, snapPixels / layout.heights.pixelsPerMetre));
    },
    onPointerUp: () => setDragging(false),
    onKeyDown: (event: KeyboardEvent<SVGGElement>) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const next =
        levelAfterKey(lift, carLevel, { key: event.key, shift: event.shiftKey }) ?? typedLevel(event.key);
      if (next === null) return;
      event.preventDefault();
      event.stopPropagation();
      onCarMove(next);
    },
  };
  return { control, dragging };
}
