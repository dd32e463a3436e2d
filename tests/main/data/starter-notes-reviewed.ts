/**
 * Sentences with a word that could suggest defeating a protection, each read by a person and found to forbid it,
 * to report it as a fault, or to use the word in another sense. A new sentence is added only after the same reading.
 */
export const reviewedSentences: ReadonlySet<string> = new Set([
  "A bridge cannot be accounted for",
  "A bridge in the door circuit means the lift may move with open doors: out of service, register, and a second person.",
  "A bridge is never used to find an open contact: the meter finds it.",
  "A bridge or parallel feed is left in the door circuit",
  "A bridge over car and landing door together is a danger: every further step waits until it is cleared.",
  "A foreign wire or link",
  "Bypass device not in normal position",
  "Clean, renew the solenoid; relief valve is set by trained people, sealed, never raised to lift more.",
  "Commissioning, modernisation, raised speed, or a switch or cam that has moved.",
  "Count what was fitted and what was taken back; position of the bypass device in the control panel.",
  "Force and closing speed are never raised to hide friction.",
  "Go to that door; clean, close or repair it, never link it.",
  "If a bridge is found in the chain, the lift stays out of service and it goes into the register.",
  "If a bridge is left in, the car can move with open doors: nobody steps over the sill.",
  "Locked off; nobody under the car unless it stands on its supports as the maker says.",
  "Look at the bridge register and at the bypass device",
  "Never a second feed to the far end and never a link over a bad contact: the contact is renewed.",
  "Never under a car that stands on oil only: it must be supported as the maker says.",
  "Never wedge or tie a landing door; an open landing door without the car behind it kills.",
  "No landing door contact is ever linked to keep the lift running.",
  "No link is set to see whether it runs.",
  "Nobody stands under a car or counterweight that the traction may not hold.",
  "Nobody stands under the car.",
  "Nobody under the car, ever.",
  "Opening the brake by hand moves the car: only trained people by the maker's procedure, never for trying.",
  "Panel marked BYPASS not normal, sign or lamp on.",
  "Speed raised or ramps softened since it was set",
  "The door bypass device or its plug is not in its normal position",
  "Thermal protection that opens is a message and is never bridged out or raised.",
]);

/** Words with a capital that may stand within a sentence. Makers' names must never be among them. */
export const capitalisedWordsAllowed: ReadonlySet<string> = new Set([
  "EN",
  "IEC",
  "ISO",
  "CAN",
  "BYPASS",
  "N",
  "J",
  "V",
]);
