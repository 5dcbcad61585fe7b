import type { MiddlewareHandler } from 'hono'
import { Hono } from 'hono'
import { auditTrail } from './audit/routes.ts'
import { createAuth } from './auth/lucia.ts'
import { backups } from './backups/routes.ts'
import { board } from './board/routes.ts'
import type { Deps, Env } from './context.ts'
import { currencyRates } from './currency-rates/routes.ts'
import { customers } from './customers/routes.ts'
import { feedLink } from './feeds/link-routes.ts'
import { feeds } from './feeds/routes.ts'
import { exports } from './exchange/export-routes.ts'
import { imports } from './exchange/import-routes.ts'
import { takesForms, takesJson } from './http/body.ts'
import { answerFault } from './http/faults.ts'
import { guardCrossSite } from './http/guard.ts'
import { securityHeaders } from './http/headers.ts'
import { requestLog } from './http/log.ts'
import { answerNothing } from './http/nothing.ts'
import { problemBody, ProblemError } from './http/problem.ts'
import { demandRules } from './http/rules-check.ts'
import { readSite } from './http/site.ts'
import { staticRoutes } from './http/static.ts'
import { install } from './install/routes.ts'
import { links } from './links/routes.ts'
import { livestockGroups } from './livestock-groups/routes.ts'
import { hearing } from './hearing/routes.ts'
import { health } from './meta/health.ts'
import { openApiOf, type OpenApi } from './meta/openapi.ts'
import { metaRoutes } from './meta/routes.ts'
import { moderation } from './moderation/routes.ts'
import { mailPages } from './pages/mail.ts'
import { notices } from './notices/routes.ts'
import { quotePages } from './pages/quote.ts'
import { setupPages } from './pages/setup.ts'
import { openPricesRoute } from './other-clubs/open-prices-route.ts'
import { otherClubs } from './other-clubs/routes.ts'
import { outlookRoutes } from './outlook/routes.ts'
import { people } from './people/routes.ts'
import { priceList } from './price-list/routes.ts'
import { priceViewRoutes } from './price-views/routes.ts'
import { pictures } from './pictures/routes.ts'
import { productPictures } from './products/picture.ts'
import { products } from './products/routes.ts'
import { quoteLinkRoutes } from './quote-links/routes.ts'
import { quotes } from './quotes/routes.ts'
import { regions } from './regions/routes.ts'
import { saleTimes } from './sale-times/routes.ts'
import { session } from './session/routes.ts'
import { sessions } from './sessions/routes.ts'
import { setupLinkRoutes } from './setup-links/routes.ts'
import { setups } from './setups/routes.ts'
import { sightings } from './sightings/routes.ts'
import { sizing } from './sizing/routes.ts'
import { stores } from './stores/routes.ts'
import { watches } from './watches/routes.ts'

const resources = new Hono<Env>()
  .route('/session', session)
  .route('/sessions', sessions)
  .route('/links', links)
  .route('/hearing', hearing)
  .route('/people', people)
  .route('/audit', auditTrail)
  .route('/install', install)
  .route('/backups', backups)
  .route('/products', products)
  .route('/products', productPictures)
  .route('/pictures', pictures)
  .route('/stores', stores)
  .route('/outlook', outlookRoutes)
  .route('/regions', regions)
  .route('/other-clubs', otherClubs)
  .route('/open-prices', openPricesRoute)
  .route('/sale-times', saleTimes)
  .route('/currency-rates', currencyRates)
  .route('/price-list', priceList)
  .route('/sightings', sightings)
  .route('/moderation', moderation)
  .route('/board', board)
  .route('/price-views', priceViewRoutes)
  .route('/watches', watches)
  .route('/notices', notices)
  .route('/feed-link', feedLink)
  .route('/customers', customers)
  .route('/imports', imports)
  .route('/exports', exports)
  .route('/quotes', quotes)
  .route('/setups', setups)
  .route('/sizing', sizing)
  .route('/livestock-groups', livestockGroups)
  .route('/quote-links', quoteLinkRoutes)
  .route('/setup-links', setupLinkRoutes)

/** What a typed client sees. */
const described = new Hono<Env>().route('/api', resources).route('/health', health)
export type Api = typeof described

const METHODS = ['GET', 'POST', 'PUT', 'PATCH', 'DELETE']
/** True where a described route, and not middleware or a file, answers this method here. */
function hasRoute(app: Hono<Env>, method: string, path: string): boolean {
  return app.router.match(method, path)[0].some(([[handler]]) => 'operationId' in handler)
}

/** Hands the database on, or answers 503 while it has never been reached. */
const withDatabase: MiddlewareHandler<Env> = async (c, next) => {
  const { db } = c.get('deps')
  if (db === null) {
    throw new ProblemError(problemBody(503, 'unavailable', 'The database has not been reached yet. It is tried again every few seconds.'), {
      'Retry-After': '5',
    })
  }
  c.set('db', db)
  await next()
}

/** The whole service as one function from request to answer; a test calls `app.request(…)`. Errors: throws where a route has no rule. */
export function createApp(deps: Deps): Hono<Env> {
  const app = new Hono<Env>()
  const auth = deps.db === null ? null : createAuth(deps.db)
  let document: Promise<OpenApi> | undefined
  const signIn: MiddlewareHandler<Env> = async (c, next) => {
    if (auth === null) throw new Error('the database is checked before the session')
    c.set('auth', auth)
    c.set('who', await auth.read(c))
    await next()
  }
  const begin: MiddlewareHandler<Env> = async (c, next) => {
    c.set('deps', deps)
    c.set('who', null)
    c.set('site', readSite(deps.config.publicUrl, c.req.url))
    c.set('allows', (path) => METHODS.filter((method) => hasRoute(app, method, path)))
    await next()
  }

  app.onError(answerFault)
  app.use('*', begin, securityHeaders, requestLog, guardCrossSite)
  app.use('/api/*', takesJson)
  app.route('/health', health)
  app.route(
    '/api',
    metaRoutes(() => (document ??= openApiOf(app))),
  )
  app.use('/api/*', withDatabase, signIn)
  app.route('/api', resources)
  app.use('/q/*', withDatabase, takesForms)
  app.use('/s/*', withDatabase, takesForms)
  app.use('/feeds/*', withDatabase)
  app.use('/m/*', withDatabase, takesForms)
  app.route('/q', quotePages)
  app.route('/s', setupPages)
  app.route('/feeds', feeds)
  app.route('/m', mailPages)
  app.route('/', staticRoutes())
  app.notFound(answerNothing)
  demandRules(app)
  return app
}
