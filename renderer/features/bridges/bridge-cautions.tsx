import { Caution } from "../../ui/caution.tsx";

/** Beside every step in which a bridge is set. */
export function SetBridgeCaution() {
  return (
    <Caution>
      Only across one contact of the safety chain, by trained people, under inspection or emergency electrical
      control, with the lift off normal service. Car door and landing door are never bridged together. A lift
      built to EN 81-20 has its own bypass device for door contacts (5.12.1.8, from memory: check the current
      text): use that instead of a lead. Local codes and the maker’s instructions decide.
    </Caution>
  );
}

/** Beside the removal and its second check. */
export function RemoveBridgeCaution() {
  return (
    <Caution>
      Isolate and lock off before you touch the terminals. Count the leads: every one that went in comes out.
      The lift stays out of service until a named person has looked at the place and the contact is proved to
      work.
    </Caution>
  );
}

export function DangerCaution() {
  return (
    <Caution>
      Stop the lift, isolate and lock off, keep everybody away from the doors. Nobody rides it and nobody goes
      on with other work until it is cleared. Tell the person in charge.
    </Caution>
  );
}
