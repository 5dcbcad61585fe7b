import { sql, type Kysely, type RawBuilder, type Selectable } from 'kysely'
import type { Kind } from '../core/catalog/kinds.ts'
import { oneMoreWords, type SightingRow } from '../core/pricing/record.ts'
import type { Sighting } from '../core/pricing/sighting.ts'
import type { Database, SightingTable } from './database.ts'
import { nameFor } from './person-names.ts'
import { manages, type Viewer } from './viewer.ts'

/** Sightings with the names beside them and what the viewer has to do with each, to be narrowed and ordered by the caller. */
export const sightingRows = (db: Kysely<Database>, viewer: Viewer) =>
  db
    .selectFrom('sighting')
    .innerJoin('product', 'product.id', 'sighting.product_id')
    .innerJoin('store', 'store.id', 'sighting.store_id')
    .innerJoin('person as reporter', 'reporter.id', 'sighting.reporter_id')
    .leftJoin('person as reader', (join) => join.on('reader.id', '=', viewer.id))
    .leftJoin('sighting_vote as mine', (join) => join.onRef('mine.sighting_id', '=', 'sighting.id').on('mine.person_id', '=', viewer.id))
    .select([
      'sighting.id',
      'sighting.product_id',
      'sighting.store_id',
      'sighting.condition',
      'sighting.price_minor',
      'sighting.printed_regular_minor',
      'sighting.seen_on',
      'sighting.last_day',
      'sighting.evidence',
      'sighting.note',
      'sighting.reporter_id',
      'sighting.received_at',
      'sighting.doubt',
      'sighting.withdrawn_at',
      'sighting.withdrawn_reason',
      'sighting.confirmations',
      'sighting.disputes',
      'sighting.gone_on',
      'sighting.imported',
      'product.name as product_name',
      'product.kind as product_kind',
      'store.name as store_name',
      'reporter.invited_by as reporter_invited_by',
      'reader.invited_by as reader_invited_by',
      'mine.vote as my_vote',
    ])
    .select(nameFor(viewer, 'reporter').as('reporter_name'))
    .select(foundGoneBy(viewer).as('gone_by'))

/** Who found it gone, for managers: a member who says so of everything empties what is told of today. */
const foundGoneBy = (viewer: Viewer): RawBuilder<string[] | null> =>
  viewer.role === 'manager'
    ? sql`case when sighting.gone_on is not null and ${manages(viewer)} then (select json_agg(${nameFor(viewer, 'finder')} order by finder.name)
        from sighting_vote gone join person finder on finder.id = gone.person_id where gone.sighting_id = sighting.id and gone.gone_on is not null) end`
    : sql`null::json`

type Row = Omit<Selectable<SightingTable>, 'accepted' | 'undo_id' | 'withdrawn_reason'> & {
  product_name: string
  product_kind: Kind
  store_name: string
  reporter_name: string
  reporter_invited_by: string | null
  reader_invited_by: string | null
  gone_by: string[] | null
  my_vote: SightingRow['myVote']
  /** Not asked for where nothing is withdrawn. */
  withdrawn_reason?: string | null
}

export function rowOf(row: Row, viewer: Viewer): SightingRow {
  const invited = tieOf(row, viewer)
  const tie = row.imported ? null : invited
  const own = row.reporter_id === viewer.id || tie !== null
  return {
    ...sightingOf(row),
    productName: row.product_name,
    storeName: row.store_name,
    reporterName: row.reporter_name,
    own,
    imported: row.imported,
    tie,
    oneMore: row.imported && invited !== null ? oneMoreOf(row) : null,
    mayVote: !own && row.withdrawn_at === null,
    myVote: row.my_vote,
    withdrawnReason: row.withdrawn_reason ?? null,
    goneBy: row.gone_by,
  }
}

/** Nothing counts beside it, so that one's own word is the first of those who are tied: it is not counted. */
function oneMoreOf({ my_vote, confirmations, disputes }: Row): string | null {
  if (my_vote === null) return null
  return (my_vote === 'confirm' ? confirmations : disputes) === 0 ? oneMoreWords(my_vote) : null
}

function tieOf({ reporter_id, reporter_invited_by, reader_invited_by }: Row, viewer: Viewer): 'invited_you' | 'invited_by_you' | null {
  if (reader_invited_by === reporter_id) return 'invited_you'
  return reporter_invited_by === viewer.id ? 'invited_by_you' : null
}

export const sightingOf = (row: Omit<Selectable<SightingTable>, 'accepted' | 'undo_id' | 'withdrawn_reason'>): Sighting => ({
  id: row.id,
  productId: row.product_id,
  storeId: row.store_id,
  condition: row.condition,
  priceMinor: row.price_minor,
  printedRegularMinor: row.printed_regular_minor,
  seenOn: row.seen_on,
  lastDay: row.last_day,
  evidence: row.evidence,
  note: row.note,
  reporterId: row.reporter_id,
  receivedAt: row.received_at.toISOString(),
  doubt: row.doubt,
  withdrawn: row.withdrawn_at !== null,
  confirmations: row.confirmations,
  disputes: row.disputes,
  goneOn: row.gone_on,
  imported: row.imported,
})
