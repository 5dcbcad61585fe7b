import { sql, type Kysely, type RawBuilder } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { Install } from '../core/install.ts'
import { documentUnits } from '../core/quote/document-units.ts'
import type { BuildLetter, QuoteDraft } from '../core/quote/draft.ts'
import type { Reading, SetupView, StepTick } from '../core/quote/quote-view.ts'
import type { SetupPlan } from '../core/startup/setup-plan.ts'
import type { ReaderUnits } from '../core/units/quantity.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'
import { readingsOf } from './setup-readings.ts'
import { advises, type Viewer } from './viewer.ts'

/** What a setup link opens: steps, ticks and readings of one build, no name and no price. */
export interface LinkedSetup {
  id: string
  linkVersion: number
  quoteNumber: string
  /** The quote was taken back after this setup was made: its prices and parts may be gone, its steps are as right as before. */
  quoteWithdrawn: boolean
  letter: BuildLetter
  plan: SetupPlan
  /** Those the quote was issued in. */
  units: ReaderUnits
  startedOn: CivilDate | null
  ticks: StepTick[]
  readings: Reading[]
  issuedAt: string
  /** Last tick or reading; null before the first. */
  lastUsedAt: string | null
}

/** The plan of the setup's build, cut out of the document in the database: the whole document is a hundred times as long. */
const PLAN: RawBuilder<SetupPlan> = sql`(select build -> 'plan' from jsonb_array_elements(quote_revision.document -> 'builds') as build
  where build ->> 'letter' = setup.letter)`

interface ToldIn {
  draft: Pick<QuoteDraft, 'units'>
  install: Pick<Install, 'units'>
}
/** What the document's units follow from. */
const TOLD_IN: RawBuilder<ToldIn> = sql`jsonb_build_object(
  'draft', jsonb_strip_nulls(jsonb_build_object('units', quote_revision.document #> '{inputs,draft,units}')),
  'install', jsonb_build_object('units', quote_revision.document #> '{inputs,install,units}'))`

/** For whoever holds a link that was checked. */
export async function findLinkedSetup(db: Kysely<Database>, setupId: string): Promise<LinkedSetup | undefined> {
  if (!isId(setupId)) return undefined
  const row = await setupsWithPlan(db)
    .select([PLAN.as('plan'), TOLD_IN.as('told_in')])
    .where('setup.id', '=', setupId)
    .executeTakeFirst()
  if (!row) return undefined
  return {
    id: row.id,
    linkVersion: row.link_version,
    quoteNumber: row.number ?? '',
    quoteWithdrawn: row.state === 'withdrawn',
    letter: row.letter,
    plan: row.plan,
    units: documentUnits(row.told_in),
    startedOn: row.started_on,
    ticks: (await ticksOf(db, [setupId])).map(({ stepId, on, onWord }) => ({ stepId, on, onWord })),
    readings: await readingsOf(db, setupId),
    issuedAt: row.issued_at.toISOString(),
    lastUsedAt: row.last_used_at?.toISOString() ?? null,
  }
}

export type SetupListRow = Omit<SetupView, 'link'> & { quoteId: string; linkVersion: number }

/** Setups of accepted quotes, newest first; advisors only. One of a quote that nobody accepted stays away until it is used. */
export async function listSetups(db: Kysely<Database>, viewer: Viewer, filter: { customerId?: string } = {}): Promise<SetupListRow[]> {
  if (filter.customerId !== undefined && !isId(filter.customerId)) return []
  let query = setupsWithPlan(db)
    .innerJoin('customer', 'customer.id', 'quote.customer_id')
    .select('customer.name as customer_name')
    .select(sql<number>`jsonb_array_length(${PLAN} -> 'steps')`.as('step_count'))
    .where(advises(viewer))
    .where((eb) => eb.or([eb('quote.state', '=', 'accepted'), eb('setup.last_used_at', 'is not', null)]))
  if (filter.customerId !== undefined) query = query.where('quote.customer_id', '=', filter.customerId)
  const rows = await query.orderBy('quote_revision.issued_at', 'desc').orderBy('setup.id').execute()
  const ticks = Map.groupBy(
    await ticksOf(
      db,
      rows.map((row) => row.id),
    ),
    (tick) => tick.setupId,
  )
  return rows.map((row) => ({
    id: row.id,
    quoteId: row.quote_id,
    linkVersion: row.link_version,
    quoteNumber: row.number ?? '',
    customerName: row.customer_name,
    letter: row.letter,
    startedOn: row.started_on,
    ticks: (ticks.get(row.id) ?? []).map(({ stepId, on, onWord }) => ({ stepId, on, onWord })),
    stepCount: row.step_count,
  }))
}

const setupsWithPlan = (db: Kysely<Database>) =>
  db
    .selectFrom('setup')
    .innerJoin('quote', 'quote.id', 'setup.quote_id')
    .innerJoin('quote_revision', (join) =>
      join.onRef('quote_revision.quote_id', '=', 'setup.quote_id').onRef('quote_revision.revision', '=', 'setup.revision'),
    )
    .select(['setup.id', 'setup.quote_id', 'setup.letter', 'setup.link_version', 'setup.started_on', 'setup.last_used_at'])
    .select(['quote.number', 'quote.state', 'quote_revision.issued_at'])

async function ticksOf(db: Kysely<Database>, setupIds: string[]): Promise<Array<StepTick & { setupId: string }>> {
  if (setupIds.length === 0) return []
  const rows = await db
    .selectFrom('setup_tick')
    .selectAll()
    .where('setup_id', 'in', setupIds)
    .orderBy('ticked_on')
    .orderBy('step_id')
    .execute()
  return rows.map((row) => ({ setupId: row.setup_id, stepId: row.step_id, on: row.ticked_on, onWord: row.on_word }))
}
