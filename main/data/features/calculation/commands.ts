import { type Handlers, signerOf } from "../../context.ts";
import { refuseOtherLift } from "../lift/refuse-other-lift.ts";
import { findCalculator, refuseInputs, runCalculator, toJson } from "./run-calculator.ts";

export const calculationCommands: Handlers<"calculation.save"> = {
  /** Computed again here, so that a saved verdict is never another than its inputs give. */
  "calculation.save"(context, { calculatorId, liftId, landingId, visitId, inputs }) {
    const calculator = findCalculator(calculatorId);
    context.records.find("lift", liftId);
    refuseOtherLift(context, "landing", landingId, liftId);
    refuseOtherLift(context, "visit", visitId, liftId);
    const result = runCalculator(calculator, inputs);
    if (result.missing.length > 0) {
      const fields = result.missing.map((key) => ({ path: ["inputs", key], message: "Still needed." }));
      refuseInputs(fields, `Nothing was saved. ${result.verdict.sentence} ${result.verdict.next}`);
    }
    const { word, sentence } = result.verdict;
    const saved = context.records.insert("calculation", {
      calculatorId,
      liftId,
      landingId,
      visitId,
      at: context.now,
      personId: signerOf(context).id,
      verdictWord: word,
      verdictSentence: sentence,
      inputs,
      result: toJson(result),
    });
    return { ...saved, verdictWord: word, verdictSentence: sentence };
  },
};
