import {
  createRootRoute,
  createRoute,
  createRouter,
  lazyRouteComponent,
  redirect,
} from '@tanstack/react-router';
import { readReferenceSearch } from './reference/referenceSearch.ts';
import { PageFault } from './shell/PageFault.tsx';
import { PieceLayout } from './shell/PieceLayout.tsx';
import { NotFound, RootLayout, Waiting } from './shell/RootLayout.tsx';

const rootRoute = createRootRoute({ component: RootLayout, notFoundComponent: NotFound });

const pieces = createRoute({
  getParentRoute: () => rootRoute,
  path: '/',
  component: lazyRouteComponent(() => import('./pieces/PiecesPage.tsx'), 'PiecesPage'),
});

const newPiece = createRoute({
  getParentRoute: () => rootRoute,
  path: '/new',
  component: lazyRouteComponent(() => import('./pieces/NewPiecePage.tsx'), 'NewPiecePage'),
});

const reference = createRoute({
  getParentRoute: () => rootRoute,
  path: '/reference',
  validateSearch: readReferenceSearch,
  component: lazyRouteComponent(() => import('./reference/ReferencePage.tsx'), 'ReferencePage'),
});

const own = createRoute({
  getParentRoute: () => rootRoute,
  path: '/reference/own',
  validateSearch: readOwnSearch,
  component: lazyRouteComponent(() => import('./reference/own/OwnPage.tsx'), 'OwnPage'),
});

const settings = createRoute({
  getParentRoute: () => rootRoute,
  path: '/settings',
  component: lazyRouteComponent(() => import('./settings/SettingsPage.tsx'), 'SettingsPage'),
});

const devices = createRoute({
  getParentRoute: () => rootRoute,
  path: '/devices',
  component: lazyRouteComponent(() => import('./access/DevicesPage.tsx'), 'DevicesPage'),
});

const piece = createRoute({ getParentRoute: () => rootRoute, path: '/piece/$id', component: PieceLayout });

const indexRedirect = createRoute({
  getParentRoute: () => piece,
  path: '/',
  beforeLoad: ({ params }) => {
    throw redirect({ to: '/piece/$id/examination', params, replace: true });
  },
});

const engagement = createRoute({
  getParentRoute: () => piece,
  path: 'engagement',
  component: lazyRouteComponent(() => import('./engagement/EngagementPage.tsx'), 'EngagementPage'),
});

const examination = createRoute({
  getParentRoute: () => piece,
  path: 'examination',
  component: lazyRouteComponent(() => import('./examination/ExaminationPage.tsx'), 'ExaminationPage'),
});

const readings = createRoute({
  getParentRoute: () => piece,
  path: 'readings',
  component: lazyRouteComponent(() => import('./readings/ReadingsPage.tsx'), 'ReadingsPage'),
});

const bench = createRoute({
  getParentRoute: () => piece,
  path: 'bench',
  component: lazyRouteComponent(() => import('./bench/BenchPage.tsx'), 'BenchPage'),
});

const condition = createRoute({
  getParentRoute: () => piece,
  path: 'condition',
  component: lazyRouteComponent(() => import('./condition/ConditionPage.tsx'), 'ConditionPage'),
});

const owners = createRoute({
  getParentRoute: () => piece,
  path: 'owners',
  component: lazyRouteComponent(() => import('./owners/OwnersPage.tsx'), 'OwnersPage'),
});

const worth = createRoute({
  getParentRoute: () => piece,
  path: 'worth',
  component: lazyRouteComponent(() => import('./worth/WorthPage.tsx'), 'WorthPage'),
});

const opinion = createRoute({
  getParentRoute: () => piece,
  path: 'opinion',
  component: lazyRouteComponent(() => import('./opinion/OpinionPage.tsx'), 'OpinionPage'),
});

const sign = createRoute({
  getParentRoute: () => piece,
  path: 'sign',
  component: lazyRouteComponent(() => import('./signing/SignPage.tsx'), 'SignPage'),
});

const comparison = createRoute({
  getParentRoute: () => piece,
  path: 'comparison',
  validateSearch: readComparisonSearch,
  component: lazyRouteComponent(() => import('./signing/ComparisonPage.tsx'), 'ComparisonPage'),
});

const history = createRoute({
  getParentRoute: () => piece,
  path: 'history',
  component: lazyRouteComponent(() => import('./history/HistoryPage.tsx'), 'HistoryPage'),
});

const plan = rootRoute.addChildren([
  pieces,
  newPiece,
  reference,
  own,
  settings,
  devices,
  piece.addChildren([
    indexRedirect,
    engagement,
    examination,
    readings,
    bench,
    condition,
    owners,
    worth,
    opinion,
    sign,
    comparison,
    history,
  ]),
]);

/** Which revision a comparison is with; the last one where it is left out. */
export type ComparisonSearch = { revision?: number };

function readComparisonSearch({ revision }: Record<string, unknown>): ComparisonSearch {
  const number = Number(revision);
  return Number.isInteger(number) && number > 0 ? { revision: number } : {};
}

/** One's own additions: which kind to add, or which entry to change, or the observation a sign is begun from. */
export type OwnSearch = { kind?: 'sign' | 'shop'; id?: string; proposal?: string };

function readOwnSearch({ kind, id, proposal }: Record<string, unknown>): OwnSearch {
  return {
    ...(kind === 'sign' || kind === 'shop' ? { kind } : {}),
    ...(typeof id === 'string' ? { id } : {}),
    ...(typeof proposal === 'string' ? { proposal } : {}),
  };
}

/** Every screen and its address. */
export function makeRouter() {
  return createRouter({
    routeTree: plan,
    defaultPendingComponent: Waiting,
    defaultErrorComponent: PageFault,
    defaultPreload: 'intent',
    scrollRestoration: false,
  });
}

declare module '@tanstack/react-router' {
  interface Register {
    router: ReturnType<typeof makeRouter>;
  }
}
