import { type ReactNode, useRef, useState } from "react";
import { Button } from "./button.tsx";
import { RuledTitle } from "./ruled-title.tsx";
import { savePicture } from "./save-picture.ts";

export interface ChartFrameProps {
  /** A sentence with the finding and its number: "41 of 318 callouts came back within 30 days". */
  readonly title: string;
  readonly number?: number;
  /** The picture: one svg. Its own `role="img"` and label say what it shows. */
  readonly children: ReactNode;
  /** Explains every line of the picture. */
  readonly caption: ReactNode;
  /** The same figures as a table. */
  readonly table?: ReactNode;
  /** Further acts in its head: the list as a file. */
  readonly acts?: ReactNode;
  /** Without ending: "repeats-2026-11". */
  readonly fileName: string;
}

export function ChartFrame({ title, number, children, caption, table, acts, fileName }: ChartFrameProps) {
  const [asTable, setAsTable] = useState(false);
  const picture = useRef<HTMLDivElement>(null);
  const showsTable = asTable && table !== undefined;
  return (
    <figure className="chart-frame">
      <RuledTitle
        {...(number === undefined ? {} : { number })}
        aside={
          <div className="chart-acts">
            {acts}
            {table !== undefined && (
              <Button
                kind="quiet"
                onPress={() => setAsTable(!asTable)}
                label={`${asTable ? "Picture" : "Table"}: ${title}`}
              >
                {asTable ? "Picture" : "Table"}
              </Button>
            )}
            {!showsTable && (
              <Button
                kind="quiet"
                label={`Save picture: ${title}`}
                onPress={() => {
                  const svg = picture.current?.querySelector("svg");
                  if (svg != null) savePicture(svg, fileName);
                }}
              >
                Save picture
              </Button>
            )}
          </div>
        }
      >
        {title}
      </RuledTitle>
      {showsTable ? (
        table
      ) : (
        <div ref={picture} className="scroll-frame">
          {children}
        </div>
      )}
      <figcaption className="chart-caption">{caption}</figcaption>
    </figure>
  );
}
