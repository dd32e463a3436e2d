import { createContext, useCallback, useContext, useEffect, useMemo, useState } from "react";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import type { Person } from "#shared-lib/contract/person.ts";
import type { SillbookError } from "#shared-lib/errors.ts";
import { writeAs } from "./shell-client.ts";
import { useRead } from "./use-read.ts";
import { runWrite } from "./use-write.ts";

export type DeviceState = OutputOf<"device.state">;

/** What every screen may need: the machine, the people, and who is writing in this window. */
export interface Program {
  readonly device: DeviceState;
  readonly people: readonly Person[];
  /** Who writes; null until somebody was chosen. */
  readonly person: Person | null;
  readonly choosePerson: (id: string) => void;
}

export const ProgramContext = createContext<Program | null>(null);

export function useProgram(): Program {
  const program = useContext(ProgramContext);
  if (program === null) throw new Error("useProgram is used outside the frame.");
  return program;
}

export interface ProgramState {
  readonly program: Program | null;
  readonly error: SillbookError | undefined;
  readonly reload: () => void;
}

/** Each window remembers its own person, so that two windows of one machine can be two people. */
const windowPersonName = "sillbook.person";

export function useProgramState(): ProgramState {
  const device = useRead("device.state", {});
  const list = useRead("person.list", {}, { enabled: device.value?.company != null });
  const [windowPersonId, setWindowPersonId] = useState(() => sessionStorage.getItem(windowPersonName));

  const people = list.value?.people;
  const person = useMemo(() => {
    if (people === undefined) return null;
    const find = (id: string | null | undefined) => people.find((one) => one.id === id && one.active);
    return find(windowPersonId) ?? find(device.value?.personId) ?? null;
  }, [people, windowPersonId, device.value?.personId]);
  // Before any child's effect can ask for something in the wrong name.
  writeAs(person?.id ?? null);

  const choosePerson = useCallback((id: string) => {
    sessionStorage.setItem(windowPersonName, id);
    setWindowPersonId(id);
    void runWrite("device.choosePerson", { personId: id });
  }, []);
  useEffect(() => {
    if (person !== null) sessionStorage.setItem(windowPersonName, person.id);
  }, [person]);

  const program = useMemo<Program | null>(() => {
    if (device.value === undefined) return null;
    if (device.value.company !== null && people === undefined) return null;
    return { device: device.value, people: people ?? [], person, choosePerson };
  }, [device.value, people, person, choosePerson]);
  const reload = useCallback(() => {
    device.reload();
    list.reload();
  }, [device.reload, list.reload]);
  return { program, error: device.error ?? list.error, reload };
}
