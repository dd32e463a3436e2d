import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { formatSince } from "#shared-lib/format.ts";
import { MarkShape } from "../../ui/mark.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { peopleAreInside, peopleWords } from "./event-parts.ts";
import { insideCallBack } from "./inside-call-back.ts";
import { WhatToSay } from "./what-to-say.tsx";

/** What was said, by whom, and the people inside: first and framed until they are out. */
export function SaidSection({ found }: { readonly found: OutputOf<"callout.find"> }) {
  const { callout, line, callers } = found;
  const facts: readonly (readonly [string, string])[] = [
    ["Fault group", `${callout.group}${callout.groupSettled ? ", settled" : ", proposed"}`],
    ["Caller", callout.caller],
    ["Call back on", callout.callBack],
    ["Received", formatSince(callout.receivedAt, new Date())],
  ];
  return (
    <section>
      <RuledTitle>What was said</RuledTitle>
      <div className="stack">
        <Inside
          callout={callout}
          callBack={insideCallBack(found)}
          isOver={!peopleAreInside(line)}
          isOpen={callout.endedAt === null}
        />
        <blockquote className="caller-words">“{callout.said}”</blockquote>
        <dl className="facts">
          {facts
            .filter(([, words]) => words !== "")
            .map(([name, words]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ))}
          {callout.displayReading !== "" && (
            <div>
              <dt>Display reading</dt>
              <dd className="marking">{callout.displayReading}</dd>
            </div>
          )}
        </dl>
        {callers.map((caller) => (
          <div key={caller.id} className="further-caller">
            <span className="soft">
              Also called, {formatSince(caller.at, new Date())}
              {caller.caller !== "" && `: ${caller.caller}`}
              {caller.callBack !== "" && `, ${caller.callBack}`}
            </span>
            <blockquote>“{caller.said}”</blockquote>
          </div>
        ))}
      </div>
    </section>
  );
}

interface InsideProps {
  readonly callout: OutputOf<"callout.find">["callout"];
  /** The number of the caller who reported people inside, in words. */
  readonly callBack: string;
  readonly isOver: boolean;
  readonly isOpen: boolean;
}

function Inside({ callout, callBack, isOver, isOpen }: InsideProps) {
  if (callout.inside === "nobody") return <p>Nobody inside.</p>;
  if (callout.inside === "not recorded")
    return <p className="soft">Not recorded whether anyone was inside.</p>;
  if (callout.inside === "not known") {
    return (
      <p className="strong pencil">
        Not known whether anyone is inside. Ask, then correct what was written: the callout cannot be closed
        before.
      </p>
    );
  }
  const count = peopleWords(callout.insideCount);
  const condition = callout.insideCondition === "" ? "" : ` ${callout.insideCondition}.`;
  if (isOver || !isOpen) {
    return (
      <p>
        <MarkShape kind="people released" /> {count} inside, released.{condition}
      </p>
    );
  }
  return (
    <div className="entrapment">
      <p>
        <MarkShape kind="person inside" className="pencil" />{" "}
        <b className="pencil">
          {count} inside.{condition}
        </b>{" "}
        <b className={callBack.startsWith("No ") ? "pencil" : ""}>{callBack}</b>
      </p>
      <WhatToSay />
    </div>
  );
}
