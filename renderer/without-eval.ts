import { z } from "zod";

// The page's content security policy forbids eval, and zod would try it for faster checks. This module stands first
// in main.tsx, because a schema decides when it is made.
z.config({ jitless: true });
