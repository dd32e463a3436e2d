import { type RefObject, useLayoutEffect, useRef, useState } from "react";

/** The frame of a printed A4 sheet, with its margins off: 276 mm at 96 pixels an inch. */
const sheetHeight = (276 / 25.4) * 96;
const frameAndPadding = 54;
const leastScale = 0.5;
/** Drawings measure their place first and are painted then; only after that the height is known. */
const passesToPaint = 2;

export interface OnePage {
  readonly ref: RefObject<HTMLDivElement | null>;
  readonly scale: number;
}

/** Makes the content of a printed sheet as much smaller as it needs to stand on one page, before it is printed. */
export function useOnePage(): OnePage {
  const ref = useRef<HTMLDivElement>(null);
  const [state, setState] = useState({ scale: 1, pass: 0 });
  useLayoutEffect(() => {
    const { scale, pass } = state;
    const content = ref.current;
    if (content === null) return;
    if (pass < passesToPaint) {
      setState({ scale, pass: pass + 1 });
      return;
    }
    const title = content.closest(".print-sheet")?.querySelector(".title-block");
    const room = sheetHeight - frameAndPadding - (title?.getBoundingClientRect().height ?? 0);
    const { height } = content.getBoundingClientRect();
    if (height <= room || scale <= leastScale) return;
    const step = Math.min(0.97, Math.max(0.8, room / height));
    setState({ scale: Math.max(leastScale, scale * step), pass: 0 });
  }, [state]);
  return { ref, scale: state.scale };
}
