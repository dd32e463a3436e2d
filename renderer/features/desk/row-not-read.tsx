import { useEffect } from "react";

interface RowNotReadProps {
  readonly index: number;
  readonly onDrawn: (index: number) => void;
}

/** Stands in a long list until its page is read; drawing it is what asks for the page. */
export function RowNotRead({ index, onDrawn }: RowNotReadProps) {
  useEffect(() => onDrawn(index), [index, onDrawn]);
  return <span className="soft">reading</span>;
}
