import * as z from 'zod'
import { KINDS } from '../../core/catalog/kinds.ts'
import type { ExchangeColumn } from '../../core/exchange/column.ts'
import { columnsOf } from '../../core/exchange/columns-of.ts'
import { DATA_SETS, type ExportSet } from '../../core/exchange/data-set.ts'
import { IMPORT_PHASES } from '../../core/exchange/import-outcome.ts'
import type { ImportView } from '../../core/exchange/import-view.ts'
import { JOB_STATES } from '../../core/jobs/job.ts'
import { answer } from './registry.ts'
import { id, instant } from './catalog.ts'

function fieldOf({ type, help, required }: ExchangeColumn): z.ZodType {
  const value = type === 'number' ? z.number() : type === 'flag' ? z.boolean() : z.string()
  const described = value.meta({ description: help })
  return required ? described : described.optional()
}
/** A file of JSON: a list of flat objects, a field a column. A field without a value is left out. */
const fileOf = (set: ExportSet, name: string) =>
  answer(name, z.array(z.strictObject(Object.fromEntries(columnsOf(set, null).map((column) => [column.heading, fieldOf(column)])))))

export const CatalogFile = fileOf('catalog', 'CatalogFile')
export const PriceListFile = fileOf('price_list', 'PriceListFile')
export const SightingsFile = fileOf('sightings', 'SightingsFile')
export const CustomersFile = fileOf('customers', 'CustomersFile')
export const StoresFile = fileOf('stores', 'StoresFile')

export const ImportAnswerOne = answer(
  'Import',
  z.strictObject({
    id,
    set: z.enum(DATA_SETS),
    kind: z.enum(KINDS).nullable(),
    format: z.enum(['csv', 'json']),
    fileName: z.string(),
    bytes: z.int(),
    dryRun: z.boolean(),
    state: z.enum(JOB_STATES),
    phase: z.enum(IMPORT_PHASES),
    done: z.int(),
    total: z.int(),
    startedBy: z.string().nullable(),
    createdAt: instant,
    endedAt: instant.nullable(),
    cancelAsked: z.boolean(),
    outcome: z
      .strictObject({
        rows: z.int(),
        creates: z.int(),
        updates: z.int(),
        unchanged: z.int(),
        faults: z.int(),
        more: z.boolean(),
        applied: z.boolean(),
        ready: z.boolean(),
      })
      .nullable(),
    words: z.string().nullable(),
    faults: z.array(
      z.strictObject({
        row: z.int(),
        column: z.string().nullable(),
        message: z.string(),
        rows: z.int().describe('How many rows have the same, told once').optional(),
      }),
    ),
  }) satisfies z.ZodType<ImportView>,
)
export const ImportsAnswer = answer('Imports', z.strictObject({ items: z.array(ImportAnswerOne) }))
