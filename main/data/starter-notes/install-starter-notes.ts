import type { DataCore } from "../data-core.ts";

export function installStarterNotes(_core: DataCore): void {}
