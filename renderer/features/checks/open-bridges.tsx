import { Link } from "@tanstack/react-router";
import { formatSince } from "#shared-lib/format.ts";
import { ErrorNote } from "../../ui/error-note.tsx";
import { Mark } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { bridgeAcross } from "../bridges/bridge-parts.ts";
import { SaveList } from "../export/save-list-panel.tsx";

/** Every open bridge and danger of all lifts, each with the way to its lift. */
export function OpenBridges() {
  const register = useRead("bridge.list", { open: true }, { entities: ["bridge", "danger", "lift", "site"] });
  if (register.error !== undefined) {
    return <ErrorNote error={register.error} onRetry={register.reload} retryWord="Read the register again" />;
  }
  if (register.value === undefined) return null;
  const now = new Date();
  const dangers = register.value.dangers.filter(({ clearedAt }) => clearedAt === null);
  const bridges = register.value.bridges.filter(({ open }) => open);
  return (
    <section aria-label="Open bridges">
      <RuledTitle
        count={bridges.length + dangers.length}
        aside={
          <span className="row">
            {bridges.length > 0 && <SaveList list="bridges" input={{ open: true }} what="Open bridges" />}
            {dangers.length > 0 && <SaveList list="dangers" input={{ open: true }} what="Open dangers" />}
          </span>
        }
      >
        Open bridges, all lifts
      </RuledTitle>
      {bridges.length + dangers.length === 0 && <p className="soft">No bridge is open on any lift.</p>}
      <ul className="checks-list">
        {dangers.map((danger) => (
          <li key={danger.id}>
            <Link className="checks-row" to="/lift/$id" params={{ id: danger.liftId }}>
              <Mark kind="bridge" word={danger.liftTitle} pencil strong />
              <span>Car door and landing door found bridged together. {danger.words}</span>
              <span className="soft label">
                {danger.foundBy.name}, {formatSince(danger.foundAt, now)}
              </span>
            </Link>
          </li>
        ))}
        {bridges.map((bridge) => (
          <li key={bridge.id}>
            <Link className="checks-row" to="/lift/$id" params={{ id: bridge.liftId }}>
              <Mark kind="bridge" word={`${bridge.liftTitle}, bridge ${bridge.number}`} pencil strong />
              <span>
                Across {bridgeAcross(bridge)}, <span className="marking">{bridge.points}</span>.{" "}
                {bridge.removedAt === null ? bridge.reason : "Taken out; the second check is missing."}
              </span>
              <span className="soft label">
                {bridge.setBy.name}, {formatSince(bridge.setAt, now)}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
