import { Link } from "@tanstack/react-router";
import { buttonClass } from "../../ui/button.tsx";
import { RuledTitle } from "../../ui/ruled-title.tsx";
import { useProgram } from "../../use-program.ts";
import { useRead } from "../../use-read.ts";

/** In an empty program: what to do first. Each step goes once it is done. */
export function FirstSteps() {
  const { people } = useProgram();
  const lifts = useRead("lift.list", {}, { entities: ["lift"] });
  if (lifts.value === undefined) return null;
  const needsLift = lifts.value.lifts.length === 0;
  const needsPeople = people.filter((person) => person.active).length < 2;
  if (!needsLift) return null;
  return (
    <section className="first-steps" aria-label="First steps">
      <RuledTitle>Do this first</RuledTitle>
      <ol>
        <li className="spread">
          <span>
            <b>Add the first site and its lift.</b> A callout can be logged without it, in free words.
          </span>
          <Link to="/lifts" className={buttonClass("plain")}>
            <span className="button-word">Add a site and lift</span>
          </Link>
        </li>
        {needsPeople && (
          <li className="spread">
            <span>
              <b>Add the people</b> who are sent, with their telephone numbers and who is on duty.
            </span>
            <Link to="/settings" className={buttonClass("plain")}>
              <span className="button-word">Add people</span>
            </Link>
          </li>
        )}
      </ol>
    </section>
  );
}
