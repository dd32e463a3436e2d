import { PageTitle } from "../../ui/page-title.tsx";
import { useProgram } from "../../use-program.ts";
import { BackupsSection } from "./backups-section.tsx";
import { CautionsSection } from "./cautions-section.tsx";
import { CompanySection } from "./company-section.tsx";
import { DeletedSection } from "./deleted-section.tsx";
import { DemonstrationSection } from "./demonstration-section.tsx";
import { LookSection } from "./look-section.tsx";
import { OldRecordsSection } from "./old-records-section.tsx";
import { PeopleSection } from "./people-section.tsx";
import "./settings.css";

export function SettingsPage() {
  const { device } = useProgram();
  return (
    <>
      <PageTitle title="Settings" />
      <div className="settings-columns">
        <div className="settings-column">
          <PeopleSection />
          <OldRecordsSection />
          <DeletedSection />
        </div>
        <div className="settings-column">
          <CompanySection />
          <LookSection />
          <BackupsSection />
          {device.demonstration && <DemonstrationSection />}
          <CautionsSection />
          <p className="soft label">
            Sillbook {device.programVersion}, SQLite {device.sqliteVersion}. Numbers given out on this machine
            begin with <span className="marking">{device.shortCode}</span>, so that those of two machines are
            told apart. After the dash, N stands for a fault note, B for a bridge, no letter for a callout.
          </p>
        </div>
      </div>
    </>
  );
}
