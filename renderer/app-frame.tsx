import { Outlet, useLocation } from "@tanstack/react-router";
import { lazy, Suspense, useEffect, useRef, useState } from "react";
import { FrameColumn } from "./app-frame-column.tsx";
import { FrameCommands } from "./app-frame-commands.tsx";
import { ErrorNote } from "./ui/error-note.tsx";
import { HatchPatterns } from "./ui/hatch-patterns.tsx";
import { listenForCommands } from "./use-command.ts";
import { ProgramContext, useProgramState } from "./use-program.ts";
import { useSavedEvents } from "./use-saved-events.ts";

const FirstStartPage = lazy(async () => {
  const { FirstStartPage: page } = await import("./features/first-start/page.tsx");
  return { default: page };
});

const TroublePage = lazy(async () => {
  const { TroublePage: page } = await import("./features/trouble/page.tsx");
  return { default: page };
});

/** Everything round the screens: the shaft of words, the keys, who is writing, and the one sheet on the right. */
export function AppFrame() {
  const { program, error, reload } = useProgramState();
  useSavedEvents();
  useEffect(listenForCommands, []);
  if (program === null) {
    return (
      <main className="sheet">
        {error === undefined ? (
          <p className="soft">Opening the records</p>
        ) : error.code.startsWith("store-") ? (
          <Suspense fallback={null}>
            <TroublePage error={error} onSolved={reload} />
          </Suspense>
        ) : (
          <ErrorNote error={error} onRetry={reload} />
        )}
      </main>
    );
  }
  if (program.device.company === null) {
    return (
      <ProgramContext value={program}>
        <main className="sheet">
          <Suspense fallback={null}>
            <FirstStartPage />
          </Suspense>
        </main>
      </ProgramContext>
    );
  }
  return (
    <ProgramContext value={program}>
      <Sheets />
    </ProgramContext>
  );
}

function Sheets() {
  const sheet = useRef<HTMLElement>(null);
  const [keysShown, setKeysShown] = useState(false);
  const isPrint = useLocation({ select: (location) => location.pathname.startsWith("/print/") });
  return (
    <div className={isPrint ? "frame frame-print" : "frame"}>
      <HatchPatterns />
      <button type="button" className="button skip" onClick={() => sheet.current?.focus()}>
        Skip to the sheet
      </button>
      {!isPrint && <FrameColumn onShowKeys={() => setKeysShown(true)} />}
      <main className="sheet" ref={sheet} tabIndex={-1}>
        <Suspense fallback={<p className="soft">Opening</p>}>
          <Outlet />
        </Suspense>
      </main>
      <FrameCommands keysShown={keysShown} onShowKeys={setKeysShown} />
    </div>
  );
}
