import { Hono } from 'hono'
import { KindSchema } from '../../core/catalog/schema.ts'
import { oneOf, strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { CatalogFile, CustomersFile, PriceListFile, SightingsFile, StoresFile } from '../answers/exchange.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { operation } from '../http/operation.ts'
import { valid } from '../http/valid.ts'
import { exportParts, type ExportOrder } from './export-file.ts'
import { streamFile } from './stream-file.ts'

const tag = 'Import and export'
const form = { format: oneOf('Format', ['csv', 'json']).default('csv'), text: oneOf('Text', ['safe', 'raw']).default('safe') }
const ExportQuery = strict('Query', form)
const CatalogQuery = strict('Query', { ...form, kind: KindSchema.optional() })

async function answerFile(c: Ctx, order: ExportOrder): Promise<Response> {
  const { install, today } = await installToday(c)
  const name = `${(order.kind ?? order.set).replaceAll('_', '-')}-${today}`
  return streamFile(c, exportParts(c.get('db'), signedIn(c), order, install.currency), { name, format: order.format })
}

export const exports = new Hono<Env>()
  .get(
    '/catalog',
    operation('exportCatalog', {
      summary: 'The catalog as a file, of one kind or of all',
      tag,
      answers: { 200: [CatalogFile, 'text/csv'] },
    }),
    valid('query', CatalogQuery),
    (c) => {
      const { kind = null, ...asked } = c.req.valid('query')
      return answerFile(c, { set: 'catalog', kind, ...asked })
    },
  )
  .get(
    '/price-list',
    operation('exportPriceList', {
      summary: 'The own price list as a file',
      tag,
      answers: { 200: [PriceListFile, 'text/csv'] },
    }),
    valid('query', ExportQuery),
    (c) => answerFile(c, { set: 'price_list', kind: null, ...c.req.valid('query') }),
  )
  .get(
    '/sightings',
    operation('exportSightings', {
      summary: 'Sightings as a file, without who saw them',
      tag,
      answers: { 200: [SightingsFile, 'text/csv'] },
    }),
    valid('query', ExportQuery),
    (c) => answerFile(c, { set: 'sightings', kind: null, ...c.req.valid('query') }),
  )
  .get(
    '/stores',
    operation('exportStores', { summary: 'Stores as a file, archived ones too', tag, answers: { 200: [StoresFile, 'text/csv'] } }),
    valid('query', ExportQuery),
    (c) => answerFile(c, { set: 'stores', kind: null, ...c.req.valid('query') }),
  )
  .get(
    '/customers',
    operation('exportCustomers', { summary: 'Customers as a file', tag, answers: { 200: [CustomersFile, 'text/csv'] } }),
    valid('query', ExportQuery),
    async (c) => {
      const entry = { actor: signedIn(c), action: 'customers_exported', subject: { kind: 'customer' } } as const
      await c
        .get('db')
        .transaction()
        .execute((trx) => audit(trx, entry))
      return answerFile(c, { set: 'customers', kind: null, ...c.req.valid('query') })
    },
  )
