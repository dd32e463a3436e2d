import { Link } from "@tanstack/react-router";
import type { Lift } from "#shared-lib/contract/lift.ts";
import type { Site } from "#shared-lib/contract/site.ts";
import { Button } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import { liftFields, siteFields } from "./lift-fields.ts";
import { RecordEditForm } from "./record-edit-form.tsx";
import { RecordFacts } from "./record-facts.tsx";
import type { RecordField } from "./record-fields.ts";
import { useRecordEdit } from "./use-record-edit.ts";

interface LiftRecordProps {
  readonly lift: Lift;
  readonly site: Site;
}

/** Everything entered about the lift, and the way in to its site. */
export function LiftRecord({ lift, site }: LiftRecordProps) {
  const write = useWrite("lift.change");
  const sites = useRead("site.list", {});
  const fields: readonly RecordField[] = [siteFieldOf(sites.value?.sites ?? [site]), ...liftFields];
  const edit = useRecordEdit({
    entity: "lift",
    fields,
    record: lift,
    save: (version, changed) => write.run({ id: lift.id, version, fields: changed }),
  });
  return (
    <section>
      <RuledTitle>Recorded about this lift</RuledTitle>
      {edit.open ? (
        <RecordEditForm edit={edit} fields={fields} pending={write.pending} />
      ) : (
        <div className="stack">
          <RecordFacts fields={liftFields} values={lift} />
          <section>
            <h3>
              Site:{" "}
              <Link to="/site/$id" params={{ id: site.id }}>
                {site.name}
              </Link>
            </h3>
            <RecordFacts fields={siteFields.filter((field) => field.key !== "name")} values={site} />
          </section>
          <div>
            <Button onPress={edit.begin}>Change what is recorded</Button>
          </div>
        </div>
      )}
    </section>
  );
}

function siteFieldOf(sites: readonly Site[]): RecordField {
  return {
    key: "siteId",
    label: "Site",
    section: "Plate and papers",
    kind: "choice",
    required: true,
    options: sites.map(({ id, name }) => ({ stored: id, words: name })),
  };
}
