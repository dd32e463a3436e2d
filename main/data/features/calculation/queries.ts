import { calculatorById, calculators } from "#shared-lib/calculators/registry.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Handlers } from "../../context.ts";
import { fromRow } from "../../record-store.ts";
import { listCalculationsSql, recentCalculationsSql } from "./calculation.sql.ts";
import { prefillInputs } from "./prefill-inputs.ts";
import { findCalculator, runCalculator, toJson } from "./run-calculator.ts";

type Described = OutputOf<"calculator.list">["calculators"][number];

function toCalculation(row: Readonly<Record<string, unknown>>): Calculation {
  const { deleted: _deleted, personId, ...calculation } = fromRow("calculation", row);
  const calculatorId = calculation.calculatorId as string;
  return {
    ...(calculation as unknown as Calculation),
    calculatorName: calculatorById(calculatorId)?.name ?? calculatorId,
    by: { id: personId as string, name: (row.personName as string | null) ?? "" },
  };
}

export const calculationQueries: Handlers<
  "calculator.list" | "calculator.compute" | "calculator.prefill" | "calculation.recent" | "calculation.list"
> = {
  "calculator.list"() {
    return {
      calculators: calculators.map(
        ({ schema: _schema, compute: _compute, ...described }) => toJson(described) as Described,
      ),
    };
  },

  "calculator.compute"(_context, { id, inputs }) {
    return { result: toJson(runCalculator(findCalculator(id), inputs)) };
  },

  "calculator.prefill"(context, { id, liftId, landingId }) {
    return prefillInputs(context, findCalculator(id), { calculatorId: id, liftId, landingId });
  },

  "calculation.recent"(context, { limit }) {
    const rows = context.store.all<Record<string, unknown>>(recentCalculationsSql, { limit });
    return {
      calculations: rows.map((row) => {
        const { inputs: _inputs, result: _result, ...calculation } = toCalculation(row);
        return {
          ...calculation,
          liftTitle: row.liftTitle as string,
          landingMarking: row.landingMarking as string | null,
        };
      }),
    };
  },

  "calculation.list"(context, { liftId, calculatorId, landingId, limit }) {
    const sql = listCalculationsSql(calculatorId !== undefined, landingId !== undefined);
    const parameters = {
      liftId,
      limit,
      ...(calculatorId ? { calculatorId } : {}),
      ...(landingId ? { landingId } : {}),
    };
    return { calculations: context.store.all<Record<string, unknown>>(sql, parameters).map(toCalculation) };
  },
};
