import { Caution } from "../../ui/caution.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";

export function CautionsSection() {
  return (
    <section className="stack">
      <RuledTitle>Cautions</RuledTitle>
      <Caution>
        Work on lifts kills. Only trained people work on them; local codes and the maker’s instructions
        decide, not this program.
      </Caution>
      <ul className="stack">
        <li>
          Isolate, lock off and prove dead before you touch. Refuge on the car roof and in the pit comes
          first.
        </li>
        <li>
          Live measuring is for trained people with a rated meter. Resistance is measured only isolated and
          proved dead.
        </li>
        <li>
          A bridge is entered in the register before it is set, under inspection or emergency electrical
          control only.
        </li>
        <li>Car door and landing door contacts are never bridged together. A bridge is never a test.</li>
        <li>No lift is back in service while a bridge is open, or while people inside are not released.</li>
      </ul>
    </section>
  );
}
