import type { Calculator } from "#shared-lib/calculators/calculator.ts";
import type { PrefillKey } from "#shared-lib/calculators/field.ts";
import { type PrefillFacts, prefill } from "#shared-lib/calculators/prefill.ts";
import { formatDate } from "#shared-lib/format.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { countLandingsSql, lastCalculationHereSql, lastCalculationsElsewhereSql } from "./calculation.sql.ts";

/** The calculator whose results at the other landings tell whether one landing stands alone. */
const zoneCalculator = "zone-sensors";

interface Place {
  readonly calculatorId: string;
  readonly liftId: string;
  readonly landingId: string | null;
}

interface SavedResult {
  readonly values?: readonly { readonly key: string; readonly value: number }[];
}

/** Zone centres at the other landings, each from its newest result, m. */
function otherCentres(store: Store, { liftId, landingId }: Place): number[] {
  const place = { liftId, landingId, calculatorId: zoneCalculator };
  return store.all<{ result: string }>(lastCalculationsElsewhereSql, place).flatMap(({ result }) => {
    const centre = (JSON.parse(result) as SavedResult).values?.find(({ key }) => key === "centre");
    return centre ? [centre.value] : [];
  });
}

function liftFacts(store: Store, lift: StoredRecord): PrefillFacts {
  const fact = (field: string): number | string | null => (lift[field] ?? null) as number | string | null;
  const found = store.get<{ count: number; travel: number | null }>(countLandingsSql, { liftId: lift.id });
  const { count: landings = 0, travel = null } = found ?? {};
  return {
    "lift.ratedSpeed": fact("ratedSpeed"),
    "lift.ratedLoad": fact("ratedLoad"),
    "lift.roping": fact("roping"),
    "lift.sheaveDiameter": fact("sheaveDiameter"),
    "lift.encoderPulses": fact("encoderPulses"),
    "lift.doorKind": fact("doorKind"),
    "lift.doorWidth": fact("doorWidth"),
    "lift.magnetLength": fact("magnetLength"),
    "lift.sensorSpacing": fact("sensorSpacing"),
    "lift.unlockNeeds": fact("unlockNeeds"),
    "lift.unlockingZone": fact("unlockingZone"),
    "lift.zoneTolerance": fact("zoneTolerance"),
    "lift.upSlowdownDistance": fact("upSlowdownDistance"),
    "lift.downSlowdownDistance": fact("downSlowdownDistance"),
    "lift.busBitRate": fact("busBitRate"),
    "lift.busLength": fact("busLength"),
    "lift.landingCount": landings > 0 ? landings : null,
    "lift.travel": travel !== null && travel > 0 ? travel : null,
  };
}

interface Filled {
  readonly inputs: Record<string, number | string | string[]>;
  readonly from: Record<string, string>;
}

/** What the lift and its landing do not tell, as it was entered for the newest result saved at this place. */
function addLastInputs(store: Store, calculator: Calculator, place: Place, filled: Filled): void {
  const last = store.get<{ at: string; inputs: string }>(lastCalculationHereSql, { ...place });
  if (!last) return;
  const parsed = JSON.parse(last.inputs) as Record<string, unknown>;
  for (const field of calculator.inputs) {
    if (field.key in filled.inputs || parsed[field.key] === undefined) continue;
    const value = calculator.schema.safeParse({ [field.key]: parsed[field.key] });
    if (!value.success) continue;
    filled.inputs[field.key] = value.data[field.key] as number | string | string[];
    filled.from[field.key] = `from the result of ${formatDate(last.at)}`;
  }
}

/**
 * Inputs of a calculator with, for each, where it is from in words. The records of lift and landing come first, the
 * newest result saved for the same lift and landing fills in what they do not tell.
 * @throws SillbookError not-found
 */
export function prefillInputs(context: Context, calculator: Calculator, place: Place): Filled {
  const { store } = context;
  const lift = context.records.find("lift", place.liftId);
  const landing = place.landingId ? context.records.find("landing", place.landingId) : null;
  const centres = otherCentres(store, place);
  const { input, origins } = prefill(calculator, {
    ...liftFacts(store, lift),
    "landing.marking": (landing?.marking ?? null) as string | null,
    "checks.otherLandings": centres.length > 0 ? centres.length : null,
    "checks.largestOtherCentre": centres.length > 0 ? Math.max(...centres.map(Math.abs)) : null,
  });
  const words = (origin: PrefillKey | "preset"): string => {
    if (origin.startsWith("checks."))
      return `from saved results of ${centres.length} other ${centres.length === 1 ? "landing" : "landings"}`;
    return origin.startsWith("landing.") ? `from landing ${landing?.marking}` : "from the lift";
  };
  const filled: Filled = { inputs: {}, from: {} };
  for (const [key, origin] of Object.entries(origins)) {
    filled.inputs[key] = input[key] as number | string | string[];
    filled.from[key] = words(origin);
  }
  addLastInputs(store, calculator, place, filled);
  return filled;
}
