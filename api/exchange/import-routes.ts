import { Hono } from 'hono'
import * as z from 'zod'
import { KindSchema } from '../../core/catalog/schema.ts'
import { civilDateAt } from '../../core/dates.ts'
import { DATA_SETS, MOST_FAULTS } from '../../core/exchange/data-set.ts'
import { faultFileName } from '../../core/exchange/fault-file-name.ts'
import { isPlainText } from '../../core/plain-text.ts'
import { oneOf, strict } from '../../core/schema.ts'
import { listJobs, findJobOfKind, resumeJob } from '../../db/jobs.ts'
import { listFaults } from '../../db/import-faults.ts'
import { getInstall } from '../../db/install.ts'
import { CatalogFile, CustomersFile, ImportAnswerOne, ImportsAnswer, PriceListFile, SightingsFile } from '../answers/exchange.ts'
import { signedIn, type Ctx, type Env } from '../context.ts'
import { FILE_TYPES, mediaTypeOf } from '../http/body.ts'
import { ById, yesNoText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { cancelImport } from './cancel-import.ts'
import { IMPORT_JOB, READY } from './import-job.ts'
import { importView } from './import-view.ts'
import { startImport } from './start-import.ts'
import { csvTemplate } from './template.ts'
import { faultFileParts } from './fault-file.ts'
import { streamFile } from './stream-file.ts'

const tag = 'Import and export'
const set = oneOf('What the file holds', DATA_SETS)
const StartQuery = strict('Query', {
  set,
  kind: KindSchema.optional(),
  dryRun: yesNoText('Dry run').default(true),
  fileName: z
    .string({ error: 'The name of the file stands once.' })
    .max(200, { error: 'The name of the file has at most 200 characters.' })
    .refine(isPlainText, { error: 'The name of the file has a control character in it.' })
    .default(''),
})
const TemplateQuery = strict('Query', { set, kind: KindSchema.optional() })
/** Imports of thirty days; a list that is longer is read by nobody. */
const MOST_LISTED = 50
/** Faults shown on the screen; the file has them all. */
const MOST_SHOWN = 100

/** One import with its first faults, or 404. */
async function answerImport(c: Ctx, id: string, status: 200 | 201) {
  const job = await findJobOfKind(c.get('db'), signedIn(c), id, IMPORT_JOB)
  return job === undefined ? notFound(c, 'import') : c.json(importView(job, await listFaults(c.get('db'), id, MOST_SHOWN)), status as 200)
}

export const imports = new Hono<Env>()
  .get(
    '/',
    operation('listImports', { summary: 'Imports of the last 30 days, newest first', tag, answers: { 200: ImportsAnswer } }),
    async (c) => {
      const jobs = await listJobs(c.get('db'), signedIn(c), IMPORT_JOB, MOST_LISTED)
      return c.json({ items: jobs.map((job) => importView(job)) }, 200)
    },
  )
  .post(
    '/',
    operation('startImport', {
      summary: 'Send a file; it is read in the background, and all of it is written or nothing',
      tag,
      body: [CatalogFile, PriceListFile, SightingsFile, CustomersFile, ...FILE_TYPES.filter((type) => type !== 'application/json')],
      answers: { 201: ImportAnswerOne },
      refuses: [404, 409, 507],
    }),
    valid('query', StartQuery),
    async (c) => {
      const { kind = null, ...asked } = c.req.valid('query')
      const format = mediaTypeOf(c.req.header('content-type')) === 'application/json' ? ('json' as const) : ('csv' as const)
      const started = await startImport(c, { ...asked, kind: asked.set === 'catalog' ? kind : null, format })
      return typeof started === 'string' ? answerImport(c, started, 201) : started
    },
  )
  .get(
    '/template',
    operation('getImportTemplate', { summary: 'An empty CSV with the columns of a file', tag, answers: { 200: 'text/csv' } }),
    valid('query', TemplateQuery),
    (c) => {
      const { set: asked, kind } = c.req.valid('query')
      c.header('Content-Type', 'text/csv; charset=utf-8')
      c.header('Content-Disposition', `attachment; filename="${(kind ?? asked).replaceAll('_', '-')}.csv"`)
      return c.body(csvTemplate(asked, kind ?? null), 200)
    },
  )
  .get(
    '/:id',
    operation('getImport', {
      summary: 'How far an import is, and what is wrong with its file',
      tag,
      answers: { 200: ImportAnswerOne },
      refuses: [404],
    }),
    valid('param', ById),
    (c) => answerImport(c, c.req.valid('param').id, 200),
  )
  .post(
    '/:id/write',
    operation('writeImport', {
      summary: 'Write the rows of a file that was tried',
      tag,
      answers: { 200: ImportAnswerOne },
      refuses: [404, 409],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      const { clock, wake } = c.get('deps')
      if ((await findJobOfKind(c.get('db'), signedIn(c), id, IMPORT_JOB)) === undefined) return notFound(c, 'import')
      const change = { when: READY, payload: { dryRun: false }, dueAt: new Date(clock()), startedBy: signedIn(c).id }
      const resumed = await resumeJob(c.get('db'), id, IMPORT_JOB, change)
      if (!resumed.ok) return refused(c, resumed.refusal)
      wake?.()
      return answerImport(c, id, 200)
    },
  )
  .post(
    '/:id/cancel',
    operation('cancelImport', {
      summary: 'End an import, or throw away one that was tried; nothing of its file is written',
      tag,
      answers: { 200: ImportAnswerOne },
      refuses: [404, 409],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      if ((await findJobOfKind(c.get('db'), signedIn(c), id, IMPORT_JOB)) === undefined) return notFound(c, 'import')
      const cancelled = await cancelImport(c, id)
      return cancelled.ok ? answerImport(c, id, 200) : refused(c, cancelled.refusal)
    },
  )
  .get(
    '/:id/faults',
    operation('getImportFaults', {
      summary: 'What is wrong with a file, by row and column',
      tag,
      answers: { 200: 'text/csv' },
      refuses: [404],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      const job = await findJobOfKind(c.get('db'), signedIn(c), id, IMPORT_JOB)
      if (job === undefined) return notFound(c, 'import')
      const { outcome, createdAt, ...order } = importView(job)
      const { timeZone } = await getInstall(c.get('db'))
      const parts = faultFileParts(c.get('db'), id, Math.max(0, (outcome?.faults ?? 0) - MOST_FAULTS))
      return streamFile(c, parts, { name: faultFileName(order, civilDateAt(Date.parse(createdAt), timeZone)), format: 'csv' })
    },
  )
