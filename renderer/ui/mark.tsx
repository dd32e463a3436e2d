import type { ReactNode } from "react";

export type MarkKind =
  | "flush"
  | "stepped"
  | "unchecked"
  | "person inside"
  | "received"
  | "passed on"
  | "arrived"
  | "people released"
  | "made safe"
  | "closed"
  | "bridge"
  | "repeat"
  | "note confirmed"
  | "note draft"
  | "note withdrawn"
  | "calculator"
  | "recorded fix"
  | "getting worse"
  | "search";

/** The word that stands beside a mark when the screen has no better one. */
export const markWords: { readonly [Kind in MarkKind]: string } = {
  flush: "passed",
  stepped: "failed",
  unchecked: "unchecked",
  "person inside": "Person inside",
  received: "Received",
  "passed on": "Passed on",
  arrived: "On site",
  "people released": "People released",
  "made safe": "Made safe",
  closed: "Closed",
  bridge: "Bridge open",
  repeat: "Repeat",
  "note confirmed": "Confirmed",
  "note draft": "Draft",
  "note withdrawn": "Withdrawn",
  calculator: "Calculator",
  "recorded fix": "Recorded fix",
  "getting worse": "Getting worse",
  search: "Search",
};

const shapes: { readonly [Kind in MarkKind]: ReactNode } = {
  flush: <path d="M1 10H8.5M11.5 10H19" strokeWidth="3" />,
  stepped: (
    <>
      <path d="M1 5H9M11 15H19" strokeWidth="3" />
      <path d="M10 5V15" strokeWidth="1.2" />
    </>
  ),
  unchecked: <path d="M1 10H8.5M11.5 10H13.5M15 10H16.6M18 10H19.4" strokeWidth="3" />,
  "person inside": (
    <>
      <path d="M2.5 1.5H17.5V18.5H2.5Z" />
      <circle cx="10" cy="6.8" r="2.1" />
      <path d="M5.8 15.5C5.8 10.4 14.2 10.4 14.2 15.5" />
    </>
  ),
  received: (
    <>
      <path d="M2 10H18" />
      <path d="M7 14L12.5 6" strokeWidth="2.4" />
    </>
  ),
  "passed on": <path d="M2 10H16M12 5.5L17 10L12 14.5" />,
  arrived: (
    <>
      <path d="M3 18V2H17V18M1 18H19" />
      <path d="M10 18V9" strokeWidth="3" />
    </>
  ),
  "people released": (
    <>
      <path d="M10 1.5H2V18.5H10" />
      <circle cx="13" cy="6.8" r="2.1" />
      <path d="M8.8 15.5C8.8 10.4 17.2 10.4 17.2 15.5" />
    </>
  ),
  "made safe": (
    <>
      <circle cx="3.2" cy="14" r="1.8" />
      <circle cx="16.8" cy="14" r="1.8" />
      <path d="M4.6 12.8L14 4.5M1 18H19" />
    </>
  ),
  closed: (
    <>
      <path d="M1 10H16" />
      <path d="M4.5 14L10 6" strokeWidth="2.4" />
      <path d="M16 3.5V16.5" strokeWidth="3" />
    </>
  ),
  bridge: (
    <>
      <circle cx="4" cy="14.5" r="1.7" />
      <circle cx="16" cy="14.5" r="1.7" />
      <path d="M0 14.5H2.3M17.7 14.5H20" />
      <path d="M4 12.5C4 3 16 3 16 12.5" strokeWidth="2.4" />
    </>
  ),
  repeat: (
    <>
      <path d="M1 14.5H19M3 11V18M10 11V18M17 11V18" />
      <path d="M3 11C3 4 10 4 10 11C10 4 17 4 17 11" />
    </>
  ),
  "note confirmed": (
    <>
      <path d="M4 1.5H16V18.5H4Z" />
      <path d="M6.5 13.5H9.4M10.8 13.5H13.6" strokeWidth="2.4" />
      <path d="M7 5.5H13M7 8.5H13" strokeWidth="1.1" />
    </>
  ),
  "note draft": (
    <>
      <path d="M4 1.5H16V18.5H4Z" strokeDasharray="3 2" />
      <path d="M7 6H13M7 9H11" strokeWidth="1.1" />
    </>
  ),
  "note withdrawn": <path d="M4 1.5H16V18.5H4ZM1.5 18L18.5 2" />,
  calculator: <path d="M2 4V16M18 4V16M2 10H18M0 12L4 8M16 12L20 8" />,
  "recorded fix": <path d="M1 10H6M14 10H19M6 5.5V14.5H14V5.5ZM8 10.4L9.6 12.2L12.4 7.8" />,
  "getting worse": <path d="M1 18H6V14H11V9H15V2M12 5L15 1.5L18 5" />,
  search: (
    <>
      <circle cx="8.5" cy="8.5" r="6" />
      <path d="M13 13L18.5 18.5" strokeWidth="2.4" />
    </>
  ),
};

interface MarkShapeProps {
  readonly kind: MarkKind;
  readonly className?: string;
}

/** Only the drawn mark, silent to a reader: for places where its word already stands beside it. */
export function MarkShape({ kind, className = "" }: MarkShapeProps) {
  return (
    <svg className={`mark ${className}`} viewBox="0 0 20 20" aria-hidden="true">
      {shapes[kind]}
    </svg>
  );
}

interface MarkProps {
  readonly kind: MarkKind;
  /** The word beside the mark; left out: the mark's own word. */
  readonly word?: ReactNode;
  /** Red pencil: something that needs a person. */
  readonly pencil?: boolean;
  readonly strong?: boolean;
}

/** A mark with its word. */
export function Mark({ kind, word = markWords[kind], pencil = false, strong = false }: MarkProps) {
  return (
    <span className={`marked${pencil ? " pencil" : ""}${strong ? " strong" : ""}`}>
      <MarkShape kind={kind} />
      <span>{word}</span>
    </span>
  );
}
