import { type ReactNode, useEffect, useRef } from "react";
import { takeOwedFocus } from "./owed-focus.ts";

interface PageTitleProps {
  /** For the window: "Kittiwake House, Lift 2". */
  readonly title: string;
  /** Shown instead of the title's words where they differ. */
  readonly children?: ReactNode;
}

/** The one h1 of a screen: names the window and takes the focus after a change of screen, so that a reader starts here. */
export function PageTitle({ title, children }: PageTitleProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Sillbook`;
  }, [title]);
  useEffect(() => {
    const sheet = heading.current?.closest("main");
    const hasFocusAlready =
      sheet?.contains(document.activeElement) === true && sheet !== document.activeElement;
    if (takeOwedFocus() && !hasFocusAlready) heading.current?.focus();
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children ?? title}
    </h1>
  );
}
