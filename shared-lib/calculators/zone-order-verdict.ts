import type { Verdict, VerdictWord } from "./result.ts";
import { whoDecides } from "./source.ts";
import type { RunKind } from "./zone-order.ts";

/** At which landings the same was seen. */
export type SeenAt = "here" | "everywhere" | "unknown";
/** Whether position count and motor direction agree with the way the car truly moved. */
export type CountDirection = "with" | "against" | "unknown";

export interface OrderFinding {
  readonly up: RunKind;
  readonly down: RunKind;
  readonly seenAt: SeenAt;
  readonly count: CountDirection;
  /** "at landing 3", or "here" */
  readonly where: string;
}

const isolated = "Isolate, lock off and prove dead first.";
const keepZone =
  "Until then the car can take one side of the landing for the other: keep the lift out of service, doors and zone signals as they are, nothing bridged.";

function verdict(
  word: VerdictWord,
  holds: boolean | null,
  sentence: string,
  parts: { because?: string; next: string; until?: string },
): Verdict {
  const until = parts.until ?? (holds === false ? keepZone : "");
  return {
    word,
    holds,
    sentence,
    because: parts.because ?? "",
    next: parts.next,
    until: until === "" ? whoDecides : `${until} ${whoDecides}`,
  };
}

/** The same reversal at every landing and in both directions. */
function reversedEverywhere(finding: OrderFinding): Verdict {
  if (finding.count === "against") {
    return verdict(
      "Reversed",
      false,
      "The position count runs against the car: the order of both signals only looks reversed.",
      {
        because:
          "Reversed at every landing and in both directions while the count goes the other way: the signals are right, the direction is not.",
        next: "Check the direction signal and the encoder connection against the site's drawing, then run both directions again.",
      },
    );
  }
  if (finding.count === "with") {
    return verdict("Crossed", false, "Upper and lower zone signal are crossed.", {
      because:
        "Reversed at every landing and in both directions, and the position count agrees with the car: wires crossed, or the sensor head upside down.",
      next: `${isolated} Compare the two wires and the sensor head with the site's drawing, put them right, then run both directions again.`,
    });
  }
  return verdict(
    "Crossed",
    false,
    "Upper and lower zone signal are crossed, or the direction is counted the wrong way round.",
    {
      because: "Reversed at every landing and in both directions: no single magnet does that.",
      next: "Compare the position count with the way the car truly moves. It agrees: wires crossed or sensor head upside down. It does not: direction signal or encoder.",
    },
  );
}

function reversedBoth(finding: OrderFinding): Verdict {
  if (finding.seenAt === "everywhere") return reversedEverywhere(finding);
  if (finding.seenAt === "here") {
    return verdict("Reversed", false, `The order is reversed ${finding.where} and right at the others.`, {
      because:
        "Crossed wires would show at every landing: here it is a wrong, double or reversed magnet, a missed edge or bounce.",
      next: `${isolated} Look at the magnet ${finding.where} against the site's drawing, then run both directions again.`,
    });
  }
  return verdict("Reversed", false, `The order is reversed ${finding.where} in both directions.`, {
    because: "One landing alone cannot tell crossed wires from a wrong magnet.",
    next: "Run past another landing in both directions. The same there: wires, sensor head or direction. Right there: the magnet here.",
  });
}

function reversedOnce(finding: OrderFinding): Verdict {
  const [direction, other] = finding.up === "reversed" ? ["up", finding.down] : ["down", finding.up];
  if (other === "not run") {
    return verdict("Reversed", false, `Moving ${direction}, the order is reversed ${finding.where}.`, {
      next: `Run the other direction as well. Only one reversed: bounce, a missed edge, or the car moving against its command. Both: run past another landing.`,
    });
  }
  return verdict("Reversed", false, `The order is reversed ${finding.where} moving ${direction} only.`, {
    because:
      "Crossed wires reverse both directions: this is bounce, a missed edge, or the car moving against its command.",
    next: "Record the signals over time, once more in each direction, with the position count beside them.",
  });
}

function oneChannel(finding: OrderFinding): Verdict {
  const kinds = [finding.up, finding.down];
  if (kinds.includes("upper only") && kinds.includes("lower only")) {
    return verdict(
      "Irregular",
      false,
      `Only the upper signal was seen one way and only the lower the other way ${finding.where}.`,
      {
        because: "A dead sensor is dead in both directions: both miss edges.",
        next: "Check gap, bracket, plug and supply of both sensors, and record the signals over time.",
      },
    );
  }
  const lost = kinds.includes("upper only") ? "lower" : "upper";
  if (kinds.includes("right")) {
    return verdict(
      "Irregular",
      false,
      `The ${lost} zone signal was missed ${finding.where} in one direction.`,
      {
        because:
          "It answers in the other direction, so it is not dead: gap too large, loose bracket or a loose contact.",
        next: `Check the gap and the bracket of the ${lost} sensor, its plug and its terminal, and run both directions again.`,
      },
    );
  }
  if (finding.seenAt === "here") {
    return verdict("Misplaced", false, `The ${lost} zone sensor does not see the magnet ${finding.where}.`, {
      because:
        "It answers at the other landings: here the gap is too large, or the magnet is too short or out of its line.",
      next: `${isolated} Set the magnet ${finding.where} to the gap and line of the site's drawing, then run both directions again.`,
    });
  }
  return verdict("Dead", false, `The ${lost} zone signal never comes.`, {
    because:
      finding.seenAt === "everywhere"
        ? "It is missing at every landing: sensor, cable or input, not a magnet."
        : "Lost sensor, gap too large, or magnet too short: one landing cannot tell them apart.",
    next:
      finding.seenAt === "everywhere"
        ? `Measure the supply and the output of the ${lost} sensor at its plug and at the input, then the gap.`
        : "Run past another landing. Missing there too: sensor, cable or input. Seen there: gap or magnet here.",
  });
}

function nothingSeen(finding: OrderFinding): Verdict {
  if (finding.seenAt === "here") {
    return verdict("Dead", false, `Neither zone signal comes ${finding.where}, both come at the others.`, {
      because: "Both sensors work elsewhere: the magnet is missing here, or far out of its line.",
      next: `${isolated} Look at the magnet ${finding.where}.`,
    });
  }
  return verdict("Dead", false, "Neither zone signal comes.", {
    because: "Two sensors rarely fail at once: their common supply, plug or cable first.",
    next: "Measure the supply of the sensors at their plug, then each output at the input it goes to.",
  });
}

function allRight(finding: OrderFinding): Verdict {
  if (finding.up === "not run" || finding.down === "not run") {
    const run = finding.up === "not run" ? "down" : "up";
    return verdict("Not enough", null, `Moving ${run}, the order is right.`, {
      next: "Run the other direction as well: some faults show in one direction only.",
    });
  }
  if (finding.count === "against") {
    return verdict("Crossed", false, "The order looks right, but the position count runs against the car.", {
      because: "Two reversals hide each other: signals crossed, and direction counted the wrong way round.",
      next: `${isolated} Compare sensor wires and direction signal with the site's drawing, then run both directions again.`,
    });
  }
  return verdict("Within", true, `The order is right ${finding.where} in both directions.`, {
    next: "The order says nothing about the place of the magnet: for that, measure positions.",
  });
}

/** Reads the two runs together. The more basic fault is told first: a missing signal before a reversed order. */
export function orderVerdict(finding: OrderFinding): Verdict {
  const kinds = [finding.up, finding.down];
  const run = kinds.filter((kind) => kind !== "not run");
  if (run.length === 0) {
    return verdict("Not enough", null, "No order was entered.", {
      next: "Enter the order seen moving up, moving down, or both.",
    });
  }
  if (run.every((kind) => kind === "nothing")) return nothingSeen(finding);
  if (kinds.includes("repeated")) {
    return verdict("Irregular", false, `An edge came more than once ${finding.where}.`, {
      because: "Bounce of a contact, a loose bracket, or a second magnet within reach.",
      next: "Record the signals over time. A few milliseconds apart: bounce. Further apart: look for a second magnet.",
    });
  }
  if (kinds.includes("nothing") || kinds.includes("broken")) {
    return verdict("Irregular", false, `The edges ${finding.where} fit no single fault.`, {
      because: "A missed edge, bounce, or a magnet out of its line.",
      next: "Record the signals over time and run both directions again.",
    });
  }
  if (kinds.includes("upper only") || kinds.includes("lower only")) return oneChannel(finding);
  if (kinds.includes("gap")) {
    return verdict("No overlap", false, `The two zone signals are never on together ${finding.where}.`, {
      because: "The magnet is not longer than the distance between the sensors, or is broken or gapped.",
      next: "Compare magnet length and sensor spacing with the site's drawing.",
    });
  }
  if (run.length === 2 && kinds.every((kind) => kind === "reversed")) return reversedBoth(finding);
  if (kinds.includes("reversed")) return reversedOnce(finding);
  return allRight(finding);
}
