import { useNavigate } from "@tanstack/react-router";
import { frameScreens } from "./frame-screens.ts";
import { Checkbox } from "./ui/checkbox.tsx";
import { Dialog } from "./ui/dialog.tsx";
import { Kbd } from "./ui/kbd.tsx";
import { type ListedCommand, useCommand, useListedCommands } from "./use-command.ts";
import { usePreference } from "./use-preference.ts";

interface FrameCommandsProps {
  readonly keysShown: boolean;
  readonly onShowKeys: (shown: boolean) => void;
}

/** The keys that work on every screen, and the list of all keys. */
export function FrameCommands({ keysShown, onShowKeys }: FrameCommandsProps) {
  useCommand({ name: "List all keys", keys: "F1", group: "Everywhere", run: () => onShowKeys(true) });
  return (
    <>
      {frameScreens.map((one) => (
        <GoCommand key={one.path} screen={one} />
      ))}
      <KeyHelp open={keysShown} onClose={() => onShowKeys(false)} />
    </>
  );
}

function GoCommand({ screen }: { readonly screen: (typeof frameScreens)[number] }) {
  const navigate = useNavigate();
  useCommand({
    name: `Go to ${screen.word}`,
    keys: `G ${screen.letter}`,
    group: "Everywhere",
    run: () => void navigate({ to: screen.path }),
  });
  return null;
}

function KeyHelp({ open, onClose }: { readonly open: boolean; readonly onClose: () => void }) {
  const commands = useListedCommands();
  const [letters, setLetters] = usePreference("letterKeys");
  const names = [...new Set(commands.map((command) => command.group))];
  const groups = [...names.filter((name) => name !== "Everywhere"), "Everywhere"];
  return (
    <Dialog title="Keys" open={open} onClose={onClose} wide>
      <Checkbox checked={letters === "on"} onChange={(on) => setLetters(on ? "on" : "off")}>
        Single letters work outside fields
      </Checkbox>
      <div className="key-help">
        {groups.map((group) => (
          <KeyGroup
            key={group}
            group={group}
            members={commands.filter((command) => command.group === group)}
          />
        ))}
      </div>
      <p className="soft label">Two letters are pressed one after the other. Escape closes this list.</p>
    </Dialog>
  );
}

function KeyGroup({
  group,
  members,
}: {
  readonly group: string;
  readonly members: readonly ListedCommand[];
}) {
  return (
    <section>
      <h3>{group}</h3>
      <dl>
        {members.map((command) => (
          <div key={`${command.keys} ${command.name}`} className="key-help-row">
            <dt>
              <Kbd keys={command.keys} />
              <span className="seen-by-reader-only">{command.keys}</span>
            </dt>
            <dd>{command.name}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
