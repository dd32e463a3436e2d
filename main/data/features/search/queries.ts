import type { Handlers } from "../../context.ts";
export const searchQueries = {} as Handlers<"search.find" | "search.similar">;
