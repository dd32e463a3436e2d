import { type RefObject, useEffect, useRef, useState } from "react";
import type { CheckStep } from "./check-types.ts";
import { packRows, sheetHeight } from "./print-pages.ts";

interface Measured {
  readonly steps: readonly CheckStep[];
  readonly cautions: readonly string[];
  readonly pages: readonly (readonly CheckStep[])[];
}

export interface PrintPages {
  readonly ref: RefObject<HTMLDivElement | null>;
  /** One page with every step until its rows are measured. */
  readonly pages: readonly (readonly CheckStep[])[];
}

/** Which steps stand on which sheet: everything is laid out on one, measured there, and parted. */
export function usePrintPages(steps: readonly CheckStep[], cautions: readonly string[]): PrintPages {
  const ref = useRef<HTMLDivElement>(null);
  const [measured, setMeasured] = useState<Measured>();
  const holds = measured?.steps === steps && measured.cautions === cautions;
  useEffect(() => {
    if (holds) return;
    let overtaken = false;
    // Rows are as high as their letters, which may still be on their way.
    void document.fonts.ready.then(() => {
      if (overtaken || ref.current === null) return;
      setMeasured({ steps, cautions, pages: measurePages(ref.current, steps) });
    });
    return () => {
      overtaken = true;
    };
  }, [holds, steps, cautions]);
  return { ref, pages: holds ? measured.pages : [steps] };
}

function measurePages(
  container: HTMLElement,
  steps: readonly CheckStep[],
): readonly (readonly CheckStep[])[] {
  const find = (selector: string): DOMRect | undefined =>
    container.querySelector(selector)?.getBoundingClientRect();
  const [sheet, table, head] = [find(".print-sheet"), find(".check-record"), find(".check-record thead")];
  const title = find(".title-block");
  if (!sheet || !table || !head || !title) return [steps];
  const rows = [...container.querySelectorAll(".check-record tbody tr")];
  const heights = rows.map((row) => row.getBoundingClientRect().height);
  const body = container.querySelector(".print-body");
  const padding = body === null ? 0 : Number.parseFloat(getComputedStyle(body).paddingTop);
  // What every sheet needs beside its rows: frame above and below, the body's margins, the table's head, the title block.
  const frame = container.querySelector(".print-sheet");
  const border = frame === null ? 0 : Number.parseFloat(getComputedStyle(frame).borderTopWidth);
  const room = sheetHeight - 2 * border - 2 * padding - head.height - title.height;
  const recordHead = table.top - sheet.top - border - padding;
  return packRows(heights, room - recordHead, room).map((page) => page.flatMap((row) => steps[row] ?? []));
}
