import type { ReactNode } from "react";

export interface PrintSheetProps {
  readonly title: string;
  readonly company: string;
  readonly site?: string;
  readonly lift?: string;
  /** "17 Nov 2026" */
  readonly date: string;
  readonly who: string;
  /** "1:100 heights, widths not to scale"; left out where nothing is drawn to scale. */
  readonly scale?: string;
  /** "1 of 2" */
  readonly page: string;
  readonly children: ReactNode;
}

/** One A4 page with frame and title block, as a drawing is issued. */
export function PrintSheet(props: PrintSheetProps) {
  const place = [props.site, props.lift].filter((part) => part !== undefined).join(", ");
  const facts: readonly (readonly [string, string | undefined])[] = [
    ["Title", props.title],
    ["Date", props.date],
    ["Page", props.page],
    ["Company", props.company],
    ["By", props.who],
    ["Scale", props.scale ?? "nothing to scale"],
    ["Site and lift", place === "" ? undefined : place],
  ];
  return (
    <article className="print-sheet" aria-label={`${props.title}, page ${props.page}`}>
      <div className="print-body">{props.children}</div>
      <dl className="title-block">
        {facts.map(([name, value]) =>
          value === undefined ? null : (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
    </article>
  );
}
