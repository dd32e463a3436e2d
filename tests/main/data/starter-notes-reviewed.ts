/**
 * Sentences with a word that could suggest defeating a protection, each read by a person and found to forbid it,
 * to report it as a fault, or to use the word in another sense. A new sentence is added only after the same reading.
 */
export const reviewedSentences: ReadonlySet<string> = new Set([
  "A bridge is never used to find an open contact: the meter finds it.",
  "Clean, renew the solenoid; relief valve is set by trained people, sealed, never raised to lift more.",
  "Commissioning, modernisation, raised speed, or a switch or cam that has moved.",
  "Force and closing speed are never raised to hide friction.",
  "Go to that door; clean, close or repair it, never link it.",
  "If a bridge is found in the chain, the lift stays out of service and it goes into the register.",
  "Locked off; nobody under the car unless it stands on its supports as the maker says.",
  "Never under a car that stands on oil only: it must be supported as the maker says.",
  "Never wedge or tie a landing door; an open landing door without the car behind it kills.",
  "No landing door contact is ever linked to keep the lift running.",
  "No link is set to see whether it runs.",
  "Nobody stands under a car or counterweight that the traction may not hold.",
  "Nobody stands under the car.",
  "Nobody under the car, ever.",
  "Opening the brake by hand moves the car: only trained people by the maker's procedure, never for trying.",
  "Speed raised or ramps softened since it was set",
]);

/** Words with a capital that may stand within a sentence. Makers' names must never be among them. */
export const capitalisedWordsAllowed: ReadonlySet<string> = new Set(["EN", "CAN"]);
