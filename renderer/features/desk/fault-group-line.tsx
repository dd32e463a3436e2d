import { useState } from "react";
import { Button } from "react-aria-components/Button";
import { Menu, MenuItem, MenuTrigger } from "react-aria-components/Menu";
import { Popover } from "react-aria-components/Popover";
import { proposeFaultGroup } from "#shared-lib/fault-group-words.ts";
import { type FaultGroup, faultGroups } from "#shared-lib/words.ts";
import { Kbd } from "../../ui/kbd.tsx";
import { useCommand } from "../../use-command.ts";

interface FaultGroupLineProps {
  readonly said: string;
  /** Null: as the words read. */
  readonly chosen: FaultGroup | null;
  readonly onChoose: (group: FaultGroup | null) => void;
}

const asRead = "as the words read";

/** "reads as doors: reopening", and the key that changes it. The group is settled when the callout is closed. */
export function FaultGroupLine({ said, chosen, onChoose }: FaultGroupLineProps) {
  const [open, setOpen] = useState(false);
  useCommand({ name: "Change the fault group", keys: "Alt G", group: "Desk", run: () => setOpen(true) });
  const proposal = proposeFaultGroup(said);
  return (
    <span className="row fault-group">
      {chosen === null ? (
        <span>
          reads as <b>{proposal.group}</b>
          {proposal.because.length > 0 && (
            <span className="wide-only-inline">: {proposal.because.slice(0, 3).join(", ")}</span>
          )}
        </span>
      ) : (
        <span>
          set to <b>{chosen}</b>
        </span>
      )}
      <MenuTrigger isOpen={open} onOpenChange={setOpen}>
        {/* Reached by its key, so that Tab goes from one question of the call straight to the next. */}
        <Button className="button button-quiet" aria-keyshortcuts="Alt+G" excludeFromTabOrder>
          <span className="button-word">
            change<span className="seen-by-reader-only"> the fault group</span>
          </span>
          <span aria-hidden="true">
            <Kbd keys="Alt G" />
          </span>
        </Button>
        <Popover className="popover" placement="bottom end" offset={4}>
          <Menu
            className="choices"
            aria-label="Fault group"
            selectionMode="single"
            selectedKeys={[chosen ?? asRead]}
            onAction={(key) => onChoose(faultGroups.find((group) => group === key) ?? null)}
          >
            {[asRead, ...faultGroups].map((group) => (
              <MenuItem key={group} id={group} textValue={group} className="choices-item">
                {group === asRead ? `${asRead}: ${proposal.group}` : group}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
    </span>
  );
}
