import {
  createHashHistory,
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Navigate,
  Outlet,
  type RouteComponent,
  useParams,
} from "@tanstack/react-router";
import type { ComponentType } from "react";
import { AppFrame } from "./app-frame.tsx";
import { ScreenError } from "./app-frame-error.tsx";
import { oweFocus } from "./ui/owed-focus.ts";
import { useProgram } from "./use-program.ts";

/** Screens may keep their filters and the chosen part in the address: `useSearch({ strict: false })`. */
function anySearch(search: Record<string, unknown>): Record<string, unknown> {
  return search;
}

const rootRoute = createRootRoute({ component: Outlet, errorComponent: ScreenError });

const frameRoute = createRoute({ getParentRoute: () => rootRoute, id: "frame", component: AppFrame });

function screen<Path extends string>(path: Path, component: RouteComponent) {
  return createRoute({
    getParentRoute: () => frameRoute,
    path,
    component,
    errorComponent: ScreenError,
    validateSearch: anySearch,
  });
}

/** A record's screen starts anew for another record, so that nothing typed for one is shown for the other. */
function byId(Page: ComponentType<{ readonly id: string }>): RouteComponent {
  return function ScreenOfRecord() {
    const { id } = useParams({ strict: false });
    return id === undefined ? null : <Page key={id} id={id} />;
  };
}

function StartScreen() {
  const { person } = useProgram();
  return <Navigate to={`/${person?.startScreen ?? "desk"}`} replace />;
}

const CalculatorPage = lazyRouteComponent(
  () => import("./features/bench/calculator-page.tsx"),
  "CalculatorPage",
);

function CalculatorScreen() {
  const { calculator } = useParams({ strict: false });
  return calculator === undefined ? null : <CalculatorPage key={calculator} calculator={calculator} />;
}

const screens = [
  createRoute({ getParentRoute: () => frameRoute, path: "/", component: StartScreen }),
  screen(
    "/desk",
    lazyRouteComponent(() => import("./features/desk/page.tsx"), "DeskPage"),
  ),
  screen(
    "/callout/$id",
    byId(lazyRouteComponent(() => import("./features/callout/page.tsx"), "CalloutPage")),
  ),
  screen(
    "/find",
    lazyRouteComponent(() => import("./features/find/page.tsx"), "FindPage"),
  ),
  screen(
    "/note/new",
    lazyRouteComponent(() => import("./features/fault-note/new-page.tsx"), "NewFaultNotePage"),
  ),
  screen(
    "/note/$id",
    byId(lazyRouteComponent(() => import("./features/fault-note/page.tsx"), "FaultNotePage")),
  ),
  screen(
    "/lifts",
    lazyRouteComponent(() => import("./features/lifts/page.tsx"), "LiftsPage"),
  ),
  screen("/site/$id", byId(lazyRouteComponent(() => import("./features/lifts/site-page.tsx"), "SitePage"))),
  screen("/lift/$id", byId(lazyRouteComponent(() => import("./features/lifts/lift-page.tsx"), "LiftPage"))),
  screen(
    "/visit/$id",
    byId(lazyRouteComponent(() => import("./features/lifts/visit-page.tsx"), "VisitPage")),
  ),
  screen(
    "/checks",
    lazyRouteComponent(() => import("./features/checks/page.tsx"), "ChecksPage"),
  ),
  screen(
    "/checks/$id",
    byId(lazyRouteComponent(() => import("./features/checks/check-page.tsx"), "CheckPage")),
  ),
  screen(
    "/bench",
    lazyRouteComponent(() => import("./features/bench/page.tsx"), "BenchPage"),
  ),
  screen("/bench/$calculator", CalculatorScreen),
  screen(
    "/review",
    lazyRouteComponent(() => import("./features/review/page.tsx"), "ReviewPage"),
  ),
  screen(
    "/bring-in",
    lazyRouteComponent(() => import("./features/import/page.tsx"), "ImportPage"),
  ),
  screen(
    "/settings",
    lazyRouteComponent(() => import("./features/settings/page.tsx"), "SettingsPage"),
  ),
  screen(
    "/print/callout/$id",
    byId(lazyRouteComponent(() => import("./features/callout/slip-print-page.tsx"), "SlipPrintPage")),
  ),
  screen(
    "/print/visit/$id",
    byId(lazyRouteComponent(() => import("./features/callout/visit-print-page.tsx"), "VisitPrintPage")),
  ),
  screen(
    "/print/lift/$id",
    byId(lazyRouteComponent(() => import("./features/lifts/lift-print-page.tsx"), "LiftPrintPage")),
  ),
  screen(
    "/print/check/$id",
    byId(lazyRouteComponent(() => import("./features/checks/check-print-page.tsx"), "CheckPrintPage")),
  ),
] as const;

export const router = createRouter({
  routeTree: rootRoute.addChildren([frameRoute.addChildren(screens)]),
  // Hash history works the same under app:// and over HTTP, and needs no rewriting in either shell.
  history: createHashHistory(),
  defaultPreload: "intent",
  scrollRestoration: true,
});

router.subscribe("onBeforeNavigate", ({ fromLocation, pathChanged }) => {
  if (fromLocation !== undefined && pathChanged) oweFocus();
});

declare module "@tanstack/react-router" {
  interface Register {
    router: typeof router;
  }
}
