import { Caution } from "../../ui/caution.tsx";

/** What a clerk says to people who are shut in a lift. */
export function WhatToSay() {
  return (
    <Caution>
      <b>Say:</b> Stay clear of the doors. Do not force them or climb out. Help is coming. Call the emergency
      services if anyone is unwell or there is smoke.
    </Caution>
  );
}
