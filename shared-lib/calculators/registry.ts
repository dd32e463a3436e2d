import { availability } from "./availability.ts";
import type { Calculator } from "./calculator.ts";
import { counterweightBalance } from "./counterweight-balance.ts";
import { doorsEnergy } from "./doors-energy.ts";
import { encoderScale } from "./encoder-scale.ts";
import { governorBuffers } from "./governor-buffers.ts";
import { motorDrive } from "./motor-drive.ts";
import { panelBus } from "./panel-bus.ts";
import { ropeElongation } from "./rope-elongation.ts";
import { suspension } from "./suspension.ts";
import { terminalSlowdown } from "./terminal-slowdown.ts";
import { traction } from "./traction.ts";
import { unintendedMovement } from "./unintended-movement.ts";
import { zoneSensors } from "./zone-sensors.ts";

/** Every calculator of the program, in the order of the list on the bench. */
export const calculators: readonly Calculator[] = [
  zoneSensors,
  terminalSlowdown,
  panelBus,
  encoderScale,
  motorDrive,
  counterweightBalance,
  doorsEnergy,
  governorBuffers,
  unintendedMovement,
  suspension,
  traction,
  ropeElongation,
  availability,
];

const byId = new Map(calculators.map((calculator) => [calculator.id, calculator]));

/** @returns undefined where no calculator has this id: a fault note may name one of a later version. */
export const calculatorById = (id: string): Calculator | undefined => byId.get(id);
