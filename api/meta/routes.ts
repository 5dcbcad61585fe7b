import { Hono } from 'hono'
import { apiReferencePage } from '../../web/pages/api-reference-page.ts'
import { formatsPage } from '../../web/pages/formats-page.ts'
import type { OpenApiDocument } from '../../web/pages/openapi-document.ts'
import type { Env } from '../context.ts'
import { pagePolicy, setPolicy } from '../http/headers.ts'
import { operation } from '../http/operation.ts'
import { PROBLEM_TITLES } from '../http/problem.ts'
import type { OpenApi } from './openapi.ts'

const tag = 'Service'
const REFUSALS = Object.entries(PROBLEM_TITLES).map(([code, title]) => ({ code, title }))

/** The API told to programs and to people. `read` gives the document; it is made once. */
export const metaRoutes = (read: () => Promise<OpenApi>) =>
  new Hono<Env>()
    .get('/openapi.json', operation('getOpenApi', { summary: 'This document', tag, answers: { 200: 'application/json' } }), async (c) => {
      c.header('Content-Type', 'application/json')
      return c.body(JSON.stringify(await read()), 200)
    })
    .get('/reference', operation('showReference', { summary: 'The same for people', tag, answers: { 200: 'text/html' } }), async (c) => {
      setPolicy(c, pagePolicy())
      return c.html(apiReferencePage((await read()) as unknown as OpenApiDocument, REFUSALS), 200)
    })
    .get(
      '/formats',
      operation('showFormats', { summary: 'What files to import and export hold', tag, answers: { 200: 'text/html' } }),
      (c) => {
        setPolicy(c, pagePolicy())
        return c.html(formatsPage(), 200)
      },
    )
