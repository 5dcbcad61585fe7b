import { createRootRoute, createRoute, createRouter, lazyRouteComponent, redirect } from '@tanstack/react-router'
import { readBoardSearch } from './prices/board-search.ts'
import { readCatalogSearch } from './catalog/catalog-search.ts'
import { queryClient } from './client/query-client.ts'
import { Frame, FrameFault, RouteFault, RouteMissing } from './frame.tsx'
import { readTrailSearch } from './trail/trail-search.ts'
import { loadPart } from './parts/load-part.ts'
import { homeOf, isPublicPath, mayOpen } from './places.ts'
import { sessionQuery } from './session/session.ts'
import { readOutlookSearch } from './prices/outlook-search.ts'
import { readWatchSearch } from './watches/watch-search.ts'

/** Signed-out visitors go to the sign-in and come back after it; a role that may not open a place goes to its own first one. */
async function guard({ location }: { location: { pathname: string; href: string } }): Promise<void> {
  if (isPublicPath(location.pathname)) return
  const { person } = await queryClient.ensureQueryData(sessionQuery)
  if (!person) throw redirect({ to: '/sign-in', search: location.pathname === '/' ? {} : { next: location.href } })
  if (location.pathname === '/' || !mayOpen(location.pathname, person.role)) throw redirect({ to: homeOf(person.role), replace: true })
}

const root = createRootRoute({ component: Frame, errorComponent: FrameFault, notFoundComponent: RouteMissing, beforeLoad: guard })
const screen: typeof lazyRouteComponent = (load, name) => lazyRouteComponent(() => loadPart(load), name)
const at = <Path extends string>(path: Path) => ({ getParentRoute: () => root, path })
const next = (search: Record<string, unknown>): { next?: string } => (typeof search['next'] === 'string' ? { next: search['next'] } : {})
const productAsked = (search: Record<string, unknown>): { product?: string } =>
  typeof search['product'] === 'string' ? { product: search['product'] } : {}
/** For whom a new quote is, and the quote that it is copied from. */
const newQuoteAsked = (search: Record<string, unknown>): { customer?: string; from?: string } => ({
  ...(typeof search['customer'] === 'string' ? { customer: search['customer'] } : {}),
  ...(typeof search['from'] === 'string' ? { from: search['from'] } : {}),
})

const routes = [
  createRoute({ ...at('/'), component: () => null }),
  createRoute({
    ...at('/sign-in'),
    validateSearch: next,
    component: screen(() => import('./sign-in/sign-in-screen.tsx'), 'SignInScreen'),
  }),
  createRoute({ ...at('/join/$token'), component: screen(() => import('./join/join-screen.tsx'), 'JoinScreen') }),
  createRoute({
    ...at('/prices'),
    validateSearch: readBoardSearch,
    component: screen(() => import('./prices/prices-screen.tsx'), 'PricesScreen'),
  }),
  createRoute({
    ...at('/prices/sale-calendar'),
    component: screen(() => import('./sale-times/sale-times-screen.tsx'), 'SaleTimesScreen'),
  }),
  createRoute({
    ...at('/prices/$productId'),
    validateSearch: readOutlookSearch,
    component: screen(() => import('./prices/product-screen.tsx'), 'ProductScreen'),
  }),
  createRoute({
    ...at('/post'),
    validateSearch: productAsked,
    component: screen(() => import('./post/post-screen.tsx'), 'PostScreen'),
  }),
  createRoute({
    ...at('/watches'),
    validateSearch: readWatchSearch,
    component: screen(() => import('./watches/watches-screen.tsx'), 'WatchesScreen'),
  }),
  createRoute({
    ...at('/catalog'),
    validateSearch: readCatalogSearch,
    component: screen(() => import('./catalog/catalog-screen.tsx'), 'CatalogScreen'),
  }),
  createRoute({
    ...at('/catalog/new'),
    component: screen(() => import('./catalog/new-product-screen.tsx'), 'NewProductScreen'),
  }),
  createRoute({ ...at('/catalog/price-list'), component: screen(() => import('./price-list/price-list-screen.tsx'), 'PriceListScreen') }),
  createRoute({
    ...at('/catalog/price-list/import'),
    component: screen(() => import('./price-list/price-list-files-screen.tsx'), 'PriceListFilesScreen'),
  }),
  createRoute({
    ...at('/catalog/price-list/$productId'),
    component: screen(() => import('./price-list/price-list-entry-screen.tsx'), 'PriceListEntryScreen'),
  }),
  createRoute({ ...at('/catalog/exchange'), component: screen(() => import('./exchange/exchange-screen.tsx'), 'ExchangeScreen') }),
  createRoute({
    ...at('/catalog/$productId'),
    component: screen(() => import('./catalog/edit-product-screen.tsx'), 'EditProductScreen'),
  }),
  createRoute({ ...at('/stores'), component: screen(() => import('./stores/stores-screen.tsx'), 'StoresScreen') }),
  createRoute({ ...at('/stores/new'), component: screen(() => import('./stores/new-store-screen.tsx'), 'NewStoreScreen') }),
  createRoute({
    ...at('/stores/$storeId'),
    component: screen(() => import('./stores/edit-store-screen.tsx'), 'EditStoreScreen'),
  }),
  createRoute({ ...at('/quotes'), component: screen(() => import('./quotes/quotes-screen.tsx'), 'QuotesScreen') }),
  createRoute({
    ...at('/quotes/new'),
    validateSearch: newQuoteAsked,
    component: screen(() => import('./quotes/new-quote-screen.tsx'), 'NewQuoteScreen'),
  }),
  createRoute({ ...at('/quotes/$quoteId'), component: screen(() => import('./quotes/desk-screen.tsx'), 'DeskScreen') }),
  createRoute({ ...at('/customers'), component: screen(() => import('./customers/customers-screen.tsx'), 'CustomersScreen') }),
  createRoute({
    ...at('/customers/$customerId'),
    component: screen(() => import('./customers/customer-screen.tsx'), 'CustomerScreen'),
  }),
  createRoute({ ...at('/setups'), component: screen(() => import('./setups/setups-screen.tsx'), 'SetupsScreen') }),
  createRoute({ ...at('/people/waiting'), component: screen(() => import('./moderation/waiting-screen.tsx'), 'WaitingScreen') }),
  createRoute({
    ...at('/people/trail'),
    validateSearch: readTrailSearch,
    component: screen(() => import('./trail/trail-screen.tsx'), 'TrailScreen'),
  }),
  createRoute({ ...at('/people'), component: screen(() => import('./people/people-screen.tsx'), 'PeopleScreen') }),
  createRoute({ ...at('/settings'), component: screen(() => import('./settings/settings-screen.tsx'), 'SettingsScreen') }),
  createRoute({ ...at('/settings/backups'), component: screen(() => import('./backups/backups-screen.tsx'), 'BackupsScreen') }),
  createRoute({
    ...at('/settings/other-clubs'),
    component: screen(() => import('./other-clubs/other-clubs-screen.tsx'), 'OtherClubsScreen'),
  }),
  createRoute({ ...at('/settings/livestock'), component: screen(() => import('./livestock/groups-screen.tsx'), 'GroupsScreen') }),
  createRoute({ ...at('/settings/livestock/$groupId'), component: screen(() => import('./livestock/group-screen.tsx'), 'GroupScreen') }),
  createRoute({ ...at('/account'), component: screen(() => import('./account/account-screen.tsx'), 'AccountScreen') }),
] as const

export const router = createRouter({
  routeTree: root.addChildren(routes),
  defaultPreload: 'intent',
  defaultErrorComponent: RouteFault,
  scrollRestoration: true,
})

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router
  }
}
