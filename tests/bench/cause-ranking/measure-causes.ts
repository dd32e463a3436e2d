import { openHistory } from "./demonstration-history.ts";
import { measurePooling } from "./measure-pooling.ts";
import { forecastAll, noteShare, rankingTable } from "./measure-ranking.ts";
import { measureSimilar } from "./measure-similar.ts";
import { calibration } from "./probability-measures.ts";

/** Prints all figures of the cause ranking; `README.md` says what each means and what none of them proves. */
export async function run(): Promise<void> {
  const history = await openHistory();
  try {
    console.log("Similar past faults, leave-one-out over the demonstration company");
    console.table(measureSimilar(history));
    const forecasts = forecastAll(history);
    console.log("Causes of the right note, leave-one-out");
    console.table(rankingTable(forecasts));
    console.log(`The note offered first is the right one: ${(100 * noteShare(history)).toFixed(1)} %`);
    console.log("Calibration of Sillbook's probabilities, five callouts and more like it");
    const told = forecasts.filter(({ thin }) => !thin).map(({ program }) => program);
    console.table(
      calibration(told).map(({ from, count, said, happened }) => ({
        "said from": from.toFixed(1),
        causes: count,
        "said, mean": count === 0 ? "" : said.toFixed(2),
        "was so": count === 0 ? "" : happened.toFixed(2),
      })),
    );
  } finally {
    history.close();
  }
  console.log("Brier score of pooling in an invented company of 72 lifts in 6 families, 400 callouts");
  console.table(
    Object.fromEntries(
      [2, 4, 10, 40].map((alike) => [`family worth ${alike} callouts`, measurePooling(alike)]),
    ),
  );
}
