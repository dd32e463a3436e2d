import { Link, useNavigate, useSearch } from "@tanstack/react-router";
import { useState } from "react";
import { calculatorById } from "#shared-lib/calculators/registry.ts";
import { buttonClass } from "../../ui/button.tsx";
import { EmptyState } from "../../ui/empty-state.tsx";
import { PageTitle } from "../../ui/page-title.tsx";
import { type BenchPlace, draftKey, placeOfSearch, searchOfPlace } from "./bench-place.ts";
import type { Carried } from "./use-carried.ts";
import { Workplace } from "./workplace.tsx";
import "./bench.css";

/** One calculator, for the lift, landing and fault note that the address names. */
export function CalculatorPage({ calculator: id }: { readonly calculator: string }) {
  const navigate = useNavigate();
  const place = placeOfSearch(useSearch({ strict: false }));
  const [carried, setCarried] = useState<Carried | null>(null);
  const calculator = calculatorById(id);
  if (calculator === undefined) {
    return (
      <>
        <PageTitle title="Calculator" />
        <EmptyState
          action={
            <Link to="/bench" className={buttonClass("plain")}>
              <span className="button-word">All calculators</span>
            </Link>
          }
        >
          This version of Sillbook has no calculator called “{id}”.
        </EmptyState>
      </>
    );
  }
  const goTo = (next: BenchPlace, taken: Carried | null): void => {
    setCarried(taken);
    void navigate({ to: "/bench/$calculator", params: { calculator: id }, search: searchOfPlace(next) });
  };
  const key = `${draftKey(id, place)} ${place.note ?? ""}`;
  return <Workplace key={key} calculator={calculator} place={place} carried={carried} onPlace={goTo} />;
}
