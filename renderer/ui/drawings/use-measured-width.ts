import { useCallback, useLayoutEffect, useRef, useState } from "react";

export interface MeasuredSize {
  /** Pixels across that the drawing may use. */
  readonly width: number;
  /** Pixels of the label text size as the person has set it. */
  readonly textSize: number;
}

/**
 * Measures the element that carries a drawing, and the size of text in it, and follows both. Drawings are
 * computed from these two numbers, so that lettering is never scaled with the picture.
 */
export function useMeasuredWidth(): {
  ref: (element: HTMLElement | null) => void;
  size: MeasuredSize | null;
} {
  const [element, setElement] = useState<HTMLElement | null>(null);
  const [size, setSize] = useState<MeasuredSize | null>(null);
  const last = useRef<MeasuredSize | null>(null);
  const ref = useCallback((next: HTMLElement | null) => setElement(next), []);

  useLayoutEffect(() => {
    if (!element) return;
    const measure = () => {
      const width = Math.floor(element.clientWidth);
      const textSize = Number.parseFloat(getComputedStyle(element).fontSize) || 14;
      if (width === last.current?.width && textSize === last.current.textSize) return;
      last.current = { width, textSize };
      setSize(last.current);
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    // The probe is one text size wide: it is what changes when only the person's text size does.
    for (const probe of element.querySelectorAll(":scope > .drawing-probe")) observer.observe(probe);
    return () => observer.disconnect();
  }, [element]);

  return { ref, size };
}
