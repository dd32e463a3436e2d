import "./without-eval.ts";
import { RouterProvider } from "@tanstack/react-router";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/frame.css";
import "./styles/controls.css";
import "./styles/fields.css";
import "./styles/tables.css";
import "./styles/attention.css";
import "./styles/drawing.css";
import "./styles/print.css";
import { router } from "./routes.tsx";
import { showTheme } from "./use-preference.ts";

showTheme();
const place = document.getElementById("program");
if (place === null) throw new Error("index.html has no element with the id program.");
createRoot(place).render(
  <StrictMode>
    <RouterProvider router={router} />
  </StrictMode>,
);
