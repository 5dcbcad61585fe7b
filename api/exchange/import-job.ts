import { rm } from 'node:fs/promises'
import { setImmediate as breathe } from 'node:timers/promises'
import type { Transaction } from 'kysely'
import type { Store } from '../../core/catalog/store.ts'
import { civilDateAt } from '../../core/dates.ts'
import { MOST_FAULTS, type DataSet } from '../../core/exchange/data-set.ts'
import type { ImportOrder, ImportOutcome, ImportPhase } from '../../core/exchange/import-outcome.ts'
import type { AuditAction, AuditSubjectKind } from '../../core/audit/audit-actions.ts'
import type { FindStoreCurrency } from '../../core/exchange/sighting-rows.ts'
import type { JsonObject } from '../../core/jobs/job.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import { audit } from '../../db/audit.ts'
import type { Database } from '../../db/database.ts'
import { addFaults } from '../../db/import-faults.ts'
import { customerTarget } from '../../db/import-customers.ts'
import { priceListTarget } from '../../db/import-price-list.ts'
import { productTarget } from '../../db/import-products.ts'
import { sightingTarget } from '../../db/import-sightings.ts'
import { countRows, decideRows, dropRows, endOfRows, undecideRows } from '../../db/import-staging.ts'
import { StaleImport, type ImportContext, type ImportTarget } from '../../db/import-target.ts'
import { getInstall } from '../../db/install.ts'
import { isUnreachable } from '../../db/reach.ts'
import { constraintOf } from '../../db/refusal.ts'
import { listStores } from '../../db/stores.ts'
import { findPerson } from '../../db/people.ts'
import type { Viewer } from '../../db/viewer.ts'
import { JobFailed, JobInterrupted, type JobHandler, type Task } from '../jobs/task.ts'
import { readFile, type ReadPosition } from './read-file.ts'
import { uploadPath } from './upload.ts'

export const IMPORT_JOB = 'import'
/** Of an outcome: its rows wait to be written. */
export const READY = { ready: true }

const TARGETS: { readonly [S in DataSet]: ImportTarget } = {
  catalog: productTarget,
  price_list: priceListTarget,
  sightings: sightingTarget,
  customers: customerTarget,
}
const TRAIL: { readonly [S in DataSet]: { action: AuditAction; kind: AuditSubjectKind } } = {
  catalog: { action: 'products_imported', kind: 'product' },
  price_list: { action: 'prices_imported', kind: 'product' },
  sightings: { action: 'sightings_imported', kind: 'sighting' },
  customers: { action: 'customers_imported', kind: 'customer' },
}

/** Rows checked or written in one statement: ten to thirty milliseconds on the embedded engine, which answers nobody meanwhile. */
const STEP_ROWS = 500
/** Somebody who changes the catalog again and again while it is written is waited for this often. */
const MOST_TRIES = 3

/** Where it is, kept with the work that reached it. `checked` is the last line checked; a check that has ended begins anew when it is asked again. */
interface Position extends ReadPosition {
  isRead: boolean
  checked: number
  /** How many the check has looked at. */
  looked: number
  isChecked: boolean
  creates: number
  updates: number
  unchanged: number
}
const UNCHECKED = { checked: 0, looked: 0, isChecked: false, creates: 0, updates: 0, unchanged: 0 }
const START: Position = { line: 0, rows: 0, faults: 0, unsound: 0, hasUnread: false, isRead: false, ...UNCHECKED }

/** One import at its work. */
interface Run {
  task: Task
  order: ImportOrder
  context: Omit<ImportContext, 'hasUnread'>
  path: string
}

const said = (task: Task, phase: ImportPhase, done: number, total: number, position?: Position, trx?: Transaction<Database>) =>
  task.at({ phase, done, total, ...(position === undefined ? {} : { position: { ...position } }) }, trx)

/**
 * Reads a file into the staging table, checks its rows against what is here, and writes all of them in one transaction, or with any fault
 * nothing. A row with a wrong cell does not keep the others from being checked: whoever mends the file has all of its faults at once. Killed at any moment it goes on where it was; nothing of it is seen before the end.
 */
export const importHandler =
  (dataDir: string): JobHandler =>
  async (task) => {
    const order = task.job.payload as unknown as ImportOrder
    const path = uploadPath(dataDir, task.job.id)
    try {
      const viewer = await managerBehind(task)
      const { currency, timeZone } = await getInstall(task.db)
      const nowMs = task.clock()
      const context = { jobId: task.job.id, viewer, currency, nowMs, today: civilDateAt(nowMs, timeZone) }
      const outcome = await run({ task, order, path, context })
      if (!outcome.ready) await forget(task, path)
      return { ...outcome }
    } catch (error) {
      // Stopped or cut off, it goes on from here; ended for good, nothing of it is kept. What a full disk keeps, the sweep takes later.
      if (!(error instanceof JobInterrupted) && !isUnreachable(error)) await forget(task, path).catch(() => undefined)
      throw error
    }
  }

/** Errors: JobFailed where whoever started it is no manager any more. */
async function managerBehind({ db, job }: Task): Promise<Viewer> {
  const person = job.startedBy === null ? undefined : await findPerson(db, job.startedBy)
  if (person === undefined || person.disabled || person.role !== 'manager')
    throw new JobFailed('Whoever started this may no longer import. Nothing was written.')
  return { id: person.id, role: person.role }
}

async function run(at: Run): Promise<ImportOutcome> {
  let position: Position = { ...START, ...(at.task.job.position as Partial<Position>) }
  if (!position.isRead) position = await read(at, position)
  await rm(at.path, { force: true })
  // Cut off behind a check that found faults: they are kept, and would be found twice.
  if (position.faults > 0 && position.isChecked) return outcomeOf(position, false)
  for (let tries = 1; ; tries += 1) {
    position = await check(at, position.isChecked ? { ...position, ...UNCHECKED } : position)
    if (position.faults > 0 || at.order.dryRun) return outcomeOf(position, false)
    try {
      return await write(at, position)
    } catch (error) {
      if (!(error instanceof StaleImport) && constraintOf(error) === undefined) throw error
      if (tries === MOST_TRIES)
        throw new JobFailed('What the file is about was changed again and again while it was written. Nothing was written; start it again.')
    }
  }
}

const outcomeOf = ({ rows, creates, updates, unchanged, faults }: Position, applied: boolean): ImportOutcome => ({
  rows,
  creates,
  updates,
  unchanged,
  faults,
  applied,
  more: faults > MOST_FAULTS,
  ready: rows > 0 && faults === 0 && !applied,
})

function currencyOfStores(stores: readonly Store[], home: string): FindStoreCurrency {
  const [byId, byName] = [new Map<string, string>(), new Map<string, string>()]
  for (const store of stores) {
    byId.set(store.id, storeCurrency(store, home))
    byName.set(store.name.toLowerCase(), storeCurrency(store, home))
  }
  return (id, name) => (id === null ? undefined : byId.get(id)) ?? byName.get(name.toLowerCase())
}

async function read({ task, order, path, context }: Run, from: Position): Promise<Position> {
  const keep: Parameters<typeof readFile>[0]['keep'] = (position, bytes, work) =>
    task.db.transaction().execute(async (trx) => {
      await work(trx)
      await said(task, 'reading', bytes, order.bytes, { ...from, ...position }, trx)
    })
  const stores = await listStores(task.db, { archived: 'all' })
  const own = stores.find((store) => store.own)
  const reached = await readFile({
    order,
    path,
    currency: context.currency,
    listCurrency: own === undefined ? context.currency : storeCurrency(own, context.currency),
    storeCurrency: currencyOfStores(stores, context.currency),
    from,
    jobId: context.jobId,
    keep,
  }).catch((error: unknown) => {
    if ((error as { code?: unknown }).code === 'ENOENT') throw new JobFailed('The file that was sent is no longer here. Send it again.')
    throw error
  })
  const position = { ...from, ...reached, isRead: true }
  await said(task, 'reading', order.bytes, order.bytes, position)
  return position
}

/** What the rows would do, in the light of what is here at this moment. */
async function check({ task, order, context: known }: Run, from: Position): Promise<Position> {
  let position = from
  const context = { ...known, hasUnread: from.hasUnread }
  await countRows(task.db)
  for (;;) {
    await breathe()
    const upTo = await endOfRows(task.db, context.jobId, position.checked, STEP_ROWS)
    const before = position
    position = await task.db.transaction().execute(async (trx) => {
      const next = upTo === undefined ? { ...before, isChecked: true } : await checkStep(trx, { order, context }, before, upTo)
      await said(task, 'checking', next.unsound + next.looked, next.rows, next, trx)
      return next
    })
    if (upTo === undefined) return position
  }
}

async function checkStep(
  trx: Transaction<Database>,
  { order, context }: { order: ImportOrder; context: ImportContext },
  before: Position,
  upTo: number,
): Promise<Position> {
  await undecideRows(trx, context.jobId, before.checked, upTo)
  const { rows, faults, decisions } = await TARGETS[order.set].check(trx, context, before.checked, upTo)
  await decideRows(trx, context.jobId, decisions)
  await addFaults(trx, context.jobId, faults.slice(0, Math.max(0, MOST_FAULTS - before.faults)))
  const count = (action: 'update' | 'same'): number => decisions.filter((one) => one.action === action).length
  const [updates, unchanged] = [count('update'), count('same')]
  return {
    ...before,
    checked: upTo,
    looked: before.looked + rows,
    faults: before.faults + faults.length,
    creates: before.creates + rows - updates - unchanged - faults.length,
    updates: before.updates + updates,
    unchanged: before.unchanged + unchanged,
  }
}

/**
 * All of it or nothing, in one transaction that ends the job too. On the embedded engine, which has one connection, others wait for these
 * seconds; on PostgreSQL nobody does.
 */
async function write({ task, order, context: known }: Run, position: Position): Promise<ImportOutcome> {
  const context = { ...known, hasUnread: position.hasUnread }
  const outcome = outcomeOf(position, true)
  const total = position.creates + position.updates + position.unchanged
  await said(task, 'writing', 0, total, position)
  const target = TARGETS[order.set]
  await task.db.transaction().execute(async (trx) => {
    let written = 0
    for (let after = 0, upTo; (upTo = await endOfRows(trx, context.jobId, after, STEP_ROWS)) !== undefined; after = upTo) {
      await target.write(trx, context, after, upTo)
      written += STEP_ROWS
      // The one connection of the embedded engine is in this transaction; there nobody else could take the job meanwhile.
      if (task.engine === 'postgres') await said(task, 'writing', Math.min(written, total), total)
      await breathe()
    }
    await target.finish?.(trx, context)
    const { action, kind } = TRAIL[order.set]
    const { creates, updates, unchanged } = outcome
    await audit(trx, { actor: context.viewer, action, subject: { kind }, after: { creates, updates, unchanged } })
    await task.finish(trx, { ...outcome } satisfies JsonObject)
  })
  return outcome
}

/** Lets go of what is not needed any more. */
async function forget(task: Task, path: string): Promise<void> {
  await rm(path, { force: true })
  while (await dropRows(task.db, task.job.id)) await breathe()
}
