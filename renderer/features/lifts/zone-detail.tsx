import { Link } from "@tanstack/react-router";
import { resultSchema } from "#shared-lib/calculators/result.ts";
import type { Calculation } from "#shared-lib/contract/calculation.ts";
import type { Landing, Lift } from "#shared-lib/contract/lift.ts";
import { formatDate } from "#shared-lib/format.ts";
import { buttonClass } from "../../ui/button.tsx";
import { LandingDetail } from "../../ui/drawings/landing-detail.tsx";
import { MarkShape } from "../../ui/mark.tsx";
import { FaultNotesLink } from "./concern-detail.tsx";
import { earlierZoneResult, newestZoneResult, zoneCentreOf } from "./lift-drawing.ts";

interface ZoneDetailProps {
  readonly lift: Lift;
  readonly landing: Landing;
  readonly calculations: readonly Calculation[];
}

/** The magnet and the sensors of one landing with the numbers of the newest saved result, each with its own limit. */
export function ZoneDetail({ lift, landing, calculations }: ZoneDetailProps) {
  const newest = newestZoneResult(calculations, landing.id);
  const earlier = earlierZoneResult(calculations, landing.id);
  const result = newest === null ? null : (resultSchema.safeParse(newest.result).data ?? null);
  const centre = zoneCentreOf(newest);
  const earlierCentre = zoneCentreOf(earlier);
  const whole = (metres: number) => Math.round(metres * 1000);
  const outside = lift.zoneTolerance !== null && centre !== null && Math.abs(centre) > lift.zoneTolerance;
  return (
    <>
      <div className="zone-detail">
        <LandingDetail
          magnetLength={lift.magnetLength === null ? null : whole(lift.magnetLength)}
          sensorSpacing={lift.sensorSpacing === null ? null : whole(lift.sensorSpacing)}
          magnetError={centre === null ? null : whole(centre)}
          outside={outside}
          levelWords={`level ${landing.marking}`}
          {...(earlier === null || earlierCentre === null
            ? {}
            : {
                earlier: {
                  magnetError: whole(earlierCentre),
                  words: `place on ${formatDate(earlier.at)}`,
                },
              })}
        />
        <div className="zone-detail-words">
          {newest === null ? (
            <p className="soft">
              No saved result of this landing yet. The calculator tells a moved magnet from a moved sensor.
            </p>
          ) : (
            <p>
              <b>{newest.verdictSentence}</b> {result?.verdict.because}{" "}
              <span className="soft">
                {formatDate(newest.at)}, {newest.by.name}
              </span>
            </p>
          )}
          <Link
            to="/bench/$calculator"
            params={{ calculator: "zone-sensors" }}
            search={{ lift: lift.id, landing: landing.id }}
            className={buttonClass("quiet")}
          >
            <MarkShape kind="calculator" />
            <span className="button-word">Open the calculator</span>
          </Link>
          <FaultNotesLink lift={lift} words={faultWords(newest)} />
        </div>
      </div>
      {result !== null && <Comparisons result={result} />}
    </>
  );
}

function faultWords(newest: Calculation | null): string {
  const word = newest?.verdictWord ?? "";
  if (word === "Reversed" || word === "Crossed" || word === "Dead")
    return `zone signals ${word.toLowerCase()}`;
  return "zone signal failed at one landing";
}

type Result = ReturnType<typeof resultSchema.parse>;

function Comparisons({ result }: { readonly result: Result }) {
  return (
    <ul className="comparisons">
      {result.comparisons.map((one) => (
        <li key={one.key}>
          <MarkShape
            kind={one.holds === null ? "unchecked" : one.holds ? "flush" : "stepped"}
            className={one.holds === false ? "pencil" : ""}
          />
          <span>
            <b className={one.holds === false ? "pencil" : ""}>{capital(one.word)}.</b> {one.reading}
            {one.rest !== "" && <span className="label soft comparison-rest">{one.rest}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
