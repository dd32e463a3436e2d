import { Link } from "@tanstack/react-router";
import { useState } from "react";
import type { Site } from "#shared-lib/contract/site.ts";
import { Button } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { SaveList } from "../export/save-list-panel.tsx";
import { AddLiftDialog } from "./add-lift-dialog.tsx";
import { siteFields } from "./lift-fields.ts";
import { LiftRow } from "./lift-row.tsx";
import { RecordEditForm } from "./record-edit-form.tsx";
import { RecordFacts } from "./record-facts.tsx";
import { RecordHistory } from "./record-history.tsx";
import { useRecordEdit } from "./use-record-edit.ts";
import "./lifts.css";

export function SitePage({ id }: { readonly id: string }) {
  const read = useRead("site.find", { id });
  const site = read.value?.site;
  return (
    <div className="lift-page">
      <PageTitle title={site?.name ?? "Site"} />
      <ErrorNote error={read.error} onRetry={read.reload} />
      {site !== undefined && <SiteRecord site={site} />}
      {site !== undefined && <LiftsOfSite site={site} />}
      {(site !== undefined || read.error?.code === "not-found") && (
        <section>
          <RuledTitle>History</RuledTitle>
          <RecordHistory entity="site" id={id} fields={siteFields} deleteWords="Delete this site" />
        </section>
      )}
    </div>
  );
}

function SiteRecord({ site }: { readonly site: Site }) {
  const write = useWrite("site.change");
  const edit = useRecordEdit({
    entity: "site",
    fields: siteFields,
    record: site,
    save: (version, changed) => write.run({ id: site.id, version, fields: changed }),
  });
  return (
    <section>
      <RuledTitle>Recorded about this site</RuledTitle>
      {edit.open ? (
        <RecordEditForm edit={edit} fields={siteFields} pending={write.pending} />
      ) : (
        <div className="stack">
          <RecordFacts fields={siteFields} values={site} />
          <div>
            <Button onPress={edit.begin}>Change what is recorded</Button>
          </div>
        </div>
      )}
    </section>
  );
}

function LiftsOfSite({ site }: { readonly site: Site }) {
  const read = useRead("lift.list", {});
  const [adds, setAdds] = useState(false);
  const lifts = (read.value?.lifts ?? []).filter((lift) => lift.siteId === site.id);
  const add = <Button onPress={() => setAdds(true)}>Add a lift</Button>;
  return (
    <section>
      <RuledTitle
        count={lifts.length}
        aside={lifts.length > 0 && <SaveList list="lifts" input={{ siteId: site.id }} />}
      >
        Lifts
      </RuledTitle>
      <ErrorNote error={read.error} onRetry={read.reload} />
      {lifts.length === 0 ? (
        <EmptyState action={add}>The lifts of this site will stand here.</EmptyState>
      ) : (
        <div className="stack">
          <ul className="lift-list">
            {lifts.map((lift) => (
              <li key={lift.id}>
                <Link to="/lift/$id" params={{ id: lift.id }} className="lift-link">
                  <LiftRow lift={lift} title={lift.name} />
                </Link>
              </li>
            ))}
          </ul>
          <div>{add}</div>
        </div>
      )}
      <AddLiftDialog siteId={site.id} open={adds} onClose={() => setAdds(false)} />
    </section>
  );
}
