import { isDeepStrictEqual } from 'node:util'
import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { KitPart, Product } from '../core/catalog/product.ts'
import { kindWords } from '../core/catalog/spec-fields.ts'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { ProductRow } from '../core/exchange/product-rows.ts'
import type { JsonObject } from '../core/jobs/job.ts'
import type { Database, ProductTable } from './database.ts'
import { groupNamed, indexGroups, type GroupIndex } from './import-groups.ts'
import { indexParts, resolveParts, type PartIndex } from './import-parts.ts'
import { stagedRows, type StagedDecision, type StagedRow } from './import-staging.ts'
import { StaleImport, type CheckedRows, type ImportContext, type ImportTarget } from './import-target.ts'
import { replaceProduct, withParts, writeParts, type ProductFields } from './products.ts'

/** Kits whose parts are looked up in one statement: at forty parts a kit, each by name and by id, 40 000 of the 65 535 values that it can have. */
const STEP_KITS = 500

type Staged = StagedRow<ProductRow>
/** Products that a row of the file may mean, by how it names them. */
type Matches = Partial<Record<'id' | 'gtin' | 'name', Product>>

/**
 * Products from a file: by id, else by number, else by kind and name one that is here is changed; any other is new. An id that nothing here has is another
 * install's: its row is taken as one without.
 */
export const productTarget: ImportTarget = { check, write: writeRows, finish: writeKits }

async function check(db: Kysely<Database>, { jobId, hasUnread }: ImportContext, after: number, upTo: number): Promise<CheckedRows> {
  const rows = await stagedRows<ProductRow>(db, jobId, after, upTo)
  const matches = await matchesOf(db, jobId, after, upTo)
  const kits = rows.filter(({ data }) => data.kind === 'kit').map(({ data }) => data)
  const parts = { ...(await indexParts(db, kits, jobId)), hasUnread }
  const groups = await indexGroups(db, rows.map(({ data }) => data)) // prettier-ignore
  const faults: ImportFault[] = []
  const decisions: StagedDecision[] = []
  for (const row of rows) {
    const decided = decide(row, matches.get(row.line) ?? {}, { parts, groups })
    if ('message' in decided) faults.push(decided)
    else if (decided.action !== 'create' || Object.keys(decided.found).length > 0) decisions.push(decided)
  }
  return { rows: rows.length, faults, decisions }
}

/** Each look-up ends at one row of an index, so that the planner cannot think of reading the whole catalog for it. */
async function matchesOf(db: Kysely<Database>, jobId: string, after: number, upTo: number): Promise<Map<number, Matches>> {
  const { rows } = await sql<Selectable<ProductTable> & { line: number; how: keyof Matches }>`
    select s.line, m.* from import_row as s cross join lateral (
      (select 'id' as how, p.* from product p where p.id = (s.data ->> 'id')::uuid limit 1)
      union all (select 'gtin', p.* from product p where p.gtin is not null and lpad(p.gtin, 14, '0') = lpad(s.data ->> 'gtin', 14, '0') limit 1)
      union all (select 'name', p.* from product p where p.kind = s.data ->> 'kind' and lower(p.name) = lower(s.data ->> 'name') limit 1)
    ) as m where s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo}`.execute(db)
  const products = await withParts(db, rows)
  const matches = new Map<number, Matches>()
  for (const [index, { line, how }] of rows.entries()) {
    const product = products[index]
    if (product) matches.set(line, { ...matches.get(line), [how]: product })
  }
  return matches
}

function decide({ line, data }: Staged, matches: Matches, index: { parts: PartIndex; groups: GroupIndex }): StagedDecision | ImportFault {
  const fault = (column: string, message: string): ImportFault => ({ row: line, column, message })
  const match = matches.id ?? matches.gtin ?? matches.name
  const isByName = data.id !== null && match !== undefined && match === matches.name
  if (isByName && makerOf(match) !== makerOf(data)) return fault('maker', SAME_NAME_ONLY)
  if (match !== undefined && match.kind !== data.kind)
    return fault(
      matches.id === undefined ? 'gtin' : 'id',
      `This is "${match.name}", ${kindWords(match.kind)}. Import it with its own kind.`,
    )
  if (matches.name !== undefined && matches.name.id !== match?.id)
    return fault('name', `There is already ${kindWords(data.kind)} called "${matches.name.name}". Choose another name.`)
  if (matches.gtin !== undefined && matches.gtin.id !== match?.id)
    return fault('gtin', `The number ${data.gtin} belongs to "${matches.gtin.name}".`)
  const parts = data.kind === 'kit' ? resolveParts(index.parts, data, match?.id ?? null) : { ok: true as const, value: [] }
  if (!parts.ok) return fault('parts', parts.refusal.words)
  const group = groupNamed(index.groups, data)
  if (!group.ok) return fault('group', group.refusal.words)
  const spec: { spec?: JsonObject } = group.value === null ? {} : { spec: { ...data.spec, group: group.value } }
  if (match === undefined) return { line, action: 'create', targetId: null, targetVersion: null, found: spec }
  const { archived } = match
  const warrantyMonths = data.warrantyMonths ?? match.warrantyMonths ?? null
  const own = isByName ? keptOf(match, { ...data, ...spec }) : { ...spec, archived: data.archived ?? archived }
  const found = { ...own, warrantyMonths } satisfies JsonObject
  const action = differs(match, fieldsOf({ ...data, ...found }, parts.value)) ? 'update' : 'same'
  return { line, action, targetId: match.id, targetVersion: match.version, found }
}

/** Of another install a product of the same name may be another maker's: it must not take the place of the one that is here. Told in the same words for each row, so that it is told once. */
const SAME_NAME_ONLY =
  'A product of this kind and name is here, and the row has another install’s id and not the same maker: whether they are one product cannot be told. Leave the id empty to change the one that is here, or choose another name.'

const makerOf = ({ maker }: Pick<Product, 'maker'>): string => maker?.toLowerCase() ?? ''

/** What stays of a product that a row of another install means by its name alone: nothing is emptied, archived or put back, and no note gives way to another. */
const keptOf = (here: Product, data: ProductRow): JsonObject => ({
  archived: here.archived,
  note: here.note ?? data.note,
  gtin: here.gtin ?? data.gtin,
  oversize: here.oversize || data.oversize,
  spec: { ...here.spec, ...definedOf(data.spec) },
})

const definedOf = (spec: object): JsonObject => JSON.parse(JSON.stringify(spec)) as JsonObject

/** The row was read by its kind's own columns, so its spec is that kind's. */
function fieldsOf({ id: _id, ...data }: ProductRow, parts: KitPart[]): ProductFields {
  return { ...data, parts, archived: data.archived ?? false } as ProductFields
}

function differs(before: Product, fields: ProductFields): boolean {
  const { id: _id, version: _version, ...stored } = before
  return !isDeepStrictEqual(withoutGaps(stored), withoutGaps(fields))
}
/** A spec field left out and one that says undefined are the same. */
const withoutGaps = (fields: Omit<Product, 'id' | 'version'>): unknown => ({ ...fields, spec: JSON.parse(JSON.stringify(fields.spec)) })

const FIELDS = sql`jsonb_to_record(r.data) as f (kind text, name text, maker text, gtin text, oversize boolean, note text, spec jsonb, archived boolean,
  "warrantyMonths" integer)`
const rowsBetween = (jobId: string, after: number, upTo: number) =>
  sql`import_row as r, ${FIELDS} where r.job_id = ${jobId} and r.line > ${after} and r.line <= ${upTo}`

/** Kits are written too, and get their parts once everything that may be in them is there. */
async function writeRows(trx: Transaction<Database>, { jobId }: ImportContext, after: number, upTo: number): Promise<void> {
  await sql`insert into product (kind, name, maker, gtin, oversize, note, spec, warranty_months, archived)
    select f.kind, f.name, f.maker, f.gtin, f.oversize, f.note, f.spec, f."warrantyMonths", coalesce(f.archived, false)
    from ${rowsBetween(jobId, after, upTo)} and r.action = 'create' order by r.line`.execute(trx)
  const { rows } = await sql<{ due: number }>`select count(*) as due from import_row
    where job_id = ${jobId} and line > ${after} and line <= ${upTo} and action = 'update'`.execute(trx)
  const due = rows[0]?.due ?? 0
  if (due === 0) return
  const { numAffectedRows } =
    await sql`update product as p set name = f.name, maker = f.maker, gtin = f.gtin, oversize = f.oversize, note = f.note,
    spec = f.spec, warranty_months = f."warrantyMonths", archived = f.archived, version = p.version + 1
    from ${rowsBetween(jobId, after, upTo)} and r.action = 'update' and p.id = r.target_id and p.version = r.target_version`.execute(trx)
  if (Number(numAffectedRows ?? 0) !== due) throw new StaleImport('a product was changed meanwhile')
}

/** The parts of every kit that is new or changed. */
async function writeKits(trx: Transaction<Database>, { jobId }: ImportContext): Promise<void> {
  const { rows } = await sql<{ data: ProductRow; id: string; version: number; action: string }>`
    select s.data, p.id, p.version, s.action from import_row as s
    join product as p on p.kind = 'kit' and lower(p.name) = lower(s.data ->> 'name')
    where s.job_id = ${jobId} and s.data ->> 'kind' = 'kit' and s.action in ('create', 'update') order by s.line`.execute(trx)
  for (let start = 0; start < rows.length; start += STEP_KITS) {
    const step = rows.slice(start, start + STEP_KITS)
    const index = await indexParts(trx, step.map(({ data }) => data), jobId) // prettier-ignore
    for (const { data, id, version, action } of step) {
      const parts = resolveParts(index, data, id)
      if (!parts.ok) throw new StaleImport(parts.refusal.words)
      if (action === 'create') await writeParts(trx, id, parts.value)
      else await replaceProduct(trx, id, version, fieldsOf(data, parts.value))
    }
  }
}
