import { useNavigate } from "@tanstack/react-router";
import { useEffect, useRef, useState } from "react";
import { errorWords } from "#shared-lib/errors.ts";
import { Button } from "../../ui/button.tsx";
import { Caution } from "../../ui/caution.tsx";
import { ErrorNote } from "../../ui/error-note.tsx";
import { FieldError } from "../../ui/field-parts.tsx";
import { LiftState } from "../../ui/lift-state.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useCommand } from "../../use-command.ts";
import { useRead } from "../../use-read.ts";
import { useWrite } from "../../use-write.ts";
import type { ChecksAddress } from "./check-address.ts";
import { InServiceAdvice } from "./in-service-advice.tsx";
import { LiftChoice } from "./lift-choice.tsx";
import { PlanChoice } from "./plan-choice.tsx";

interface StartCheckProps {
  readonly address: ChecksAddress;
  readonly onLift: (liftId: string | null) => void;
}

/** Choose lift and plan, read the cautions, start. */
export function StartCheck({ address, onLift }: StartCheckProps) {
  const [liftId, setLiftId] = useState(address.lift);
  const [planId, setPlanId] = useState(address.plan);
  const [asked, setAsked] = useState(false);
  const form = useRef<HTMLElement>(null);
  const plans = useRead("check.plans", liftId === null ? {} : { liftId }, {
    entities: ["lift", "landing", "signal"],
    keepPrevious: true,
  });
  const lifts = useRead(
    "lift.list",
    {},
    { entities: ["lift", "site", "bridge", "danger", "callout", "callout event"] },
  );
  const lift = lifts.value?.lifts.find(({ id }) => id === liftId);
  const plan = plans.value?.plans.find(({ id }) => id === planId);
  const noLandings = plan !== undefined && liftId !== null && !plans.loading && plan.steps.length === 0;
  useEffect(() => onLift(liftId), [liftId, onLift]);
  useCommand({
    name: "Start a signal check",
    keys: "K",
    group: "Checks",
    run: () => form.current?.querySelector("input")?.focus(),
  });
  const begin = useBegin(address);
  const start = () => {
    setAsked(true);
    if (liftId !== null && plan !== undefined && !noLandings) void begin.run(liftId, plan.id);
  };
  return (
    <section className="stack checks-start-form" aria-label="Start a signal check" ref={form}>
      <RuledTitle>Start a signal check</RuledTitle>
      <LiftChoice
        lift={lift}
        liftId={liftId}
        onLift={setLiftId}
        problem={asked && liftId === null ? "Choose the lift that is checked." : undefined}
      />
      {lift !== undefined && <LiftState lift={lift} />}
      {lift?.danger === true && <FieldError problem={errorWords["danger-open"]} />}
      {plans.error !== undefined && <ErrorNote error={plans.error} onRetry={plans.reload} />}
      {plans.value !== undefined && (
        <PlanChoice
          plans={plans.value.plans}
          planId={plan?.id ?? null}
          onPlan={setPlanId}
          counted={liftId !== null}
          problem={asked && plan === undefined ? "Choose what is checked." : undefined}
        />
      )}
      {plan !== undefined && <Caution>{plan.cautions.join(" ")}</Caution>}
      <InServiceAdvice lift={lift} planId={plan?.id} />
      {noLandings && (
        <FieldError problem="The landings of this lift are not recorded: enter them with the lift, then start the check." />
      )}
      <ErrorNote error={begin.error} />
      <div className="buttons checks-start">
        <Button kind="first" onPress={start} pending={begin.pending} disabled={lift?.danger === true}>
          Start the check
        </Button>
      </div>
    </section>
  );
}

/** Starts the check and goes to its first step. A callout or visit of the address belongs only to the lift named with it. */
function useBegin(address: ChecksAddress) {
  const navigate = useNavigate();
  const { run, pending, error } = useWrite("check.start");
  return {
    pending,
    error,
    run: async (liftId: string, planId: string) => {
      const belongs = liftId === address.lift;
      const result = await run({
        liftId,
        planId,
        calloutId: belongs ? address.callout : null,
        visitId: belongs ? address.visit : null,
      });
      if (result.ok) void navigate({ to: "/checks/$id", params: { id: result.value.id } });
    },
  };
}
