import { fromHistory } from "#shared-lib/diagnosis/rank-causes.ts";
import type { History, PastFix } from "./demonstration-history.ts";
import { type Forecast, type ForecastFigures, measureForecasts } from "./probability-measures.ts";

interface Attached extends PastFix {
  readonly noteId: string;
  readonly causeKey: string;
}

export interface RankingForecasts {
  readonly thin: boolean;
  readonly program: Forecast;
  readonly commonest: Forecast;
  readonly noteOrder: Forecast;
}

const isAttached = (fix: PastFix): fix is Attached => fix.noteId !== null && fix.causeKey !== null;

/** Each callout that a cause of a note ended, forecast from all the others. */
export function forecastAll({ fixes, ask }: History): RankingForecasts[] {
  const attached = fixes.filter(isAttached);
  return attached.map((fix) => {
    const { noteId, calloutId, causeKey: truth } = fix;
    const { causes, evidence } = ask("cause.rank", { noteId, calloutId });
    const keys = [...causes].sort((one, other) => one.place - other.place).map(({ key }) => key);
    const others = attached.filter((one) => one.noteId === noteId && one.calloutId !== calloutId);
    const shares = keys.map((key) => {
      const of = others.filter(({ causeKey }) => causeKey === key).length;
      return [key, others.length === 0 ? 1 / keys.length : of / others.length] as const;
    });
    return {
      thin: evidence.thin,
      program: { truth, probabilities: new Map(causes.map(({ key, probability }) => [key, probability])) },
      commonest: { truth, probabilities: new Map(shares) },
      noteOrder: { truth, probabilities: fromHistory(keys, []) },
    };
  });
}

export function rankingTable(forecasts: readonly RankingForecasts[]): Record<string, Record<string, string>> {
  const rows = [
    ["all callouts", forecasts],
    ["five and more like it", forecasts.filter(({ thin }) => !thin)],
  ] as const;
  const ways = {
    Sillbook: "program",
    "most common cause": "commonest",
    "order of the note": "noteOrder",
  } as const;
  return Object.fromEntries(
    rows.flatMap(([which, some]) =>
      Object.entries(ways).map(([name, way]) => [
        `${name}, ${which}`,
        toWords(measureForecasts(some.map((one) => one[way]))),
      ]),
    ),
  );
}

function toWords({ callouts, first, firstThree, brier }: ForecastFigures): Record<string, string> {
  return {
    "first right": `${(100 * first).toFixed(1)} %`,
    "among the first three": `${(100 * firstThree).toFixed(1)} %`,
    Brier: brier.toFixed(3),
    callouts: String(callouts),
  };
}

/** From the caller's words alone: is the first fault note that is offered the one the fix was attached to? */
export function noteShare({ fixes, ask }: History): number {
  const attached = fixes.filter(isAttached);
  const right = attached.filter(({ said, liftId, noteId }) => {
    const [first] = ask("faultNote.suggest", { text: said, liftId, limit: 1 }).notes;
    return first?.id === noteId;
  });
  return right.length / attached.length;
}
