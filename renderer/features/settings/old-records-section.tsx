import { Link } from "@tanstack/react-router";
import { buttonClass } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";

export function OldRecordsSection() {
  return (
    <section className="stack">
      <RuledTitle>Records from before Sillbook</RuledTitle>
      <p>
        Callouts, or sites and lifts, from a CSV or XLSX table. Similar past faults and causes then answer
        from them too.
      </p>
      <p>
        <Link to="/bring-in" className={buttonClass("plain")}>
          <span className="button-word">Bring in old records</span>
        </Link>
      </p>
    </section>
  );
}
