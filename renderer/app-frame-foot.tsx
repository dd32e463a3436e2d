import { Link } from "@tanstack/react-router";
import { Button } from "react-aria-components/Button";
import { Menu, MenuItem, MenuTrigger } from "react-aria-components/Menu";
import { Popover } from "react-aria-components/Popover";
import { Text } from "react-aria-components/Text";
import { Kbd } from "./ui/kbd.tsx";
import { SavedState } from "./ui/saved-state.tsx";
import { useProgram } from "./use-program.ts";
import { useSavedSummary } from "./use-saved-state.ts";

/** Whether all is saved, who is writing, and whether the data is real. */
export function FrameFoot({ onShowKeys }: { readonly onShowKeys: () => void }) {
  const { device } = useProgram();
  return (
    <div className="foot">
      <button type="button" className="keys-button" aria-keyshortcuts="F1" onClick={onShowKeys}>
        Keys{" "}
        <span aria-hidden="true">
          <Kbd keys="F1" />
        </span>
      </button>
      <SavedSummaryLine />
      <PersonSwitcher />
      {device.demonstration && <div className="demonstration">Demonstration data</div>}
    </div>
  );
}

function SavedSummaryLine() {
  const { device } = useProgram();
  const { connected, failure, pending, drafts, savedAt } = useSavedSummary();
  const reason = failure ?? device.notSaved;
  if (!connected) {
    return <SavedState kind="not saved" reason="The program does not answer. What you typed is kept here." />;
  }
  if (reason !== null) return <SavedState kind="not saved" reason={reason} />;
  if (pending > 0) return <SavedState kind="saving" />;
  const kept = [...drafts.values()].sort().at(-1);
  if (kept !== undefined) return <SavedState kind="not saved yet" keptAt={kept} />;
  const at = savedAt ?? device.lastSavedAt;
  return at === null ? null : <SavedState kind="saved" at={at} words="All saved" />;
}

function PersonSwitcher() {
  const { people, person, choosePerson } = useProgram();
  const offered = people.filter((one) => one.active);
  return (
    <MenuTrigger>
      <Button
        className="person-button"
        aria-label={
          person === null
            ? "Who is writing? Choose your name"
            : `${person.name}, ${person.role}. Change person`
        }
      >
        {person === null ? (
          <span className="person-name pencil strong">Choose your name</span>
        ) : (
          <>
            <span className="person-name">{person.name}</span>
            <br />
            <span className="soft">{person.role}</span>
          </>
        )}
      </Button>
      <Popover className="popover" placement="top start" offset={4}>
        {offered.length === 0 ? (
          <p className="choices-empty">
            Nobody is entered yet. <Link to="/settings">Add people in Settings</Link>
          </p>
        ) : (
          <Menu
            className="choices"
            aria-label="Who is writing"
            items={offered}
            selectionMode="single"
            disallowEmptySelection
            selectedKeys={person === null ? [] : [person.id]}
            onAction={(id) => choosePerson(String(id))}
          >
            {(one) => (
              <MenuItem id={one.id} textValue={one.name} className="choices-item">
                <Text slot="label">{one.name}</Text>
                <Text slot="description" className="choices-note">
                  {one.onDuty ? `${one.role}, on duty` : one.role}
                </Text>
              </MenuItem>
            )}
          </Menu>
        )}
      </Popover>
    </MenuTrigger>
  );
}
