import { Link, useLocation } from "@tanstack/react-router";
import type { CSSProperties } from "react";
import { FrameFoot } from "./app-frame-foot.tsx";
import { frameScreens, screenOf } from "./frame-screens.ts";
import { MarkShape } from "./ui/mark.tsx";

/** Seven words at seven levels of a shaft; the car stands where you are. */
export function FrameColumn({ onShowKeys }: { readonly onShowKeys: () => void }) {
  const here = useLocation({ select: (location) => screenOf(location.pathname) });
  const level = frameScreens.findIndex((one) => one.path === here);
  const isLast = level === frameScreens.length - 1;
  const car = {
    "--car-level": Math.max(0, level),
    "--car-extra": isLast ? "var(--settings-gap)" : "0rem",
  } as CSSProperties;
  return (
    <header className="column">
      <div className="brand">
        <MarkShape kind="flush" />
        Sillbook
      </div>
      <nav aria-label="Screens">
        <ul className="shaft-words" style={car} data-car={level < 0 ? "none" : "stands"}>
          {frameScreens.map((one) => (
            <li key={one.path}>
              <Link to={one.path} {...(one.path === here ? { "aria-current": "page" as const } : {})}>
                {one.word}
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <FrameFoot onShowKeys={onShowKeys} />
    </header>
  );
}
