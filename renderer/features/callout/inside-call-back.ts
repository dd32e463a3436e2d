import type { OutputOf } from "#shared-lib/contract/operations.ts";

type Found = Pick<OutputOf<"callout.find">, "callers"> & {
  readonly callout: Pick<OutputOf<"callout.find">["callout"], "callBack" | "insideSince">;
};

/** A later caller is written down right after the people that this call reported. */
const sameCall = 60_000;

/** On which number the people inside are reached: that of the caller who reported them, never another's unsaid. */
export function insideCallBack({ callout, callers }: Found): string {
  const { callBack, insideSince } = callout;
  if (insideSince === null) return numberWords(callBack);
  const since = Date.parse(insideSince);
  const reporter = callers.find(({ at }) => Math.abs(Date.parse(at) - since) < sameCall);
  if (reporter === undefined) return laterCallBack(callBack);
  if (reporter.callBack !== "") return numberWords(reporter.callBack);
  return `No number from this caller.${callBack === "" ? "" : ` First caller: ${callBack}.`}`;
}

/** Where only the first caller's number is at hand and the people were reported later. */
export function laterCallBack(callBack: string): string {
  return callBack === "" ? "No call-back number is written down." : `First caller: ${callBack}.`;
}

function numberWords(callBack: string): string {
  return callBack === "" ? "No call-back number is written down." : `Call back on ${callBack}.`;
}
