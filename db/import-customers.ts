import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { CustomerRow } from '../core/exchange/customer-rows.ts'
import type { CustomerTable, Database } from './database.ts'
import { stagedRows, type StagedDecision, type StagedRow } from './import-staging.ts'
import { StaleImport, type CheckedRows, type ImportContext, type ImportTarget } from './import-target.ts'

/** Customers from a file: by id, else by name and how to reach them, one who is here is changed; any other is new, one with an id of another install too. */
export const customerTarget: ImportTarget = { check, write: writeRows }

type Known = Pick<Selectable<CustomerTable>, 'id' | 'name' | 'reach' | 'note' | 'erased_on' | 'version'> & { line: number }

async function check(db: Kysely<Database>, { jobId }: ImportContext, after: number, upTo: number): Promise<CheckedRows> {
  const rows = await stagedRows<CustomerRow>(db, jobId, after, upTo)
  const { rows: known } = await sql<Known>`
    select s.line, m.* from import_row as s cross join lateral (
      (select c.* from customer c where c.id = (s.data ->> 'id')::uuid limit 1)
      union all (select c.* from customer c where not exists (select from customer own where own.id = (s.data ->> 'id')::uuid) and lower(c.name) = lower(s.data ->> 'name') and c.reach = s.data ->> 'reach'
        and c.erased_on is null order by c.created_at, c.id limit 1)
    ) as m where s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo}`.execute(db)
  const byLine = new Map(known.map((one) => [one.line, one]))
  const faults: ImportFault[] = []
  const decisions: StagedDecision[] = []
  for (const row of rows) {
    const decided = decide(row, byLine.get(row.line))
    if ('message' in decided) faults.push(decided)
    else if (decided.action !== 'create') decisions.push(decided)
  }
  return { rows: rows.length, faults, decisions }
}

function decide({ line, data }: StagedRow<CustomerRow>, known: Known | undefined): StagedDecision | ImportFault {
  if (known === undefined) return { line, action: 'create', targetId: null, targetVersion: null, found: {} }
  if (known.erased_on !== null)
    return { row: line, column: 'id', message: `This customer was erased on ${known.erased_on}. Leave the row out.` }
  const isSame = known.name === data.name && known.reach === data.reach && known.note === data.note
  return { line, action: isSame ? 'same' : 'update', targetId: known.id, targetVersion: known.version, found: {} }
}

async function writeRows(trx: Transaction<Database>, { jobId }: ImportContext, after: number, upTo: number): Promise<void> {
  const between = sql`s.job_id = ${jobId} and s.line > ${after} and s.line <= ${upTo}`
  await sql`insert into customer (name, reach, note) select s.data ->> 'name', s.data ->> 'reach', s.data ->> 'note'
    from import_row as s where ${between} and s.action = 'create' order by s.line`.execute(trx)
  const { numAffectedRows } =
    await sql`update customer as c set name = s.data ->> 'name', reach = s.data ->> 'reach', note = s.data ->> 'note',
    version = c.version + 1 from import_row as s
    where ${between} and s.action = 'update' and c.id = s.target_id and c.version = s.target_version and c.erased_on is null`.execute(trx)
  const { rows } = await sql<{ due: number }>`select count(*) as due from import_row as s where ${between} and s.action = 'update'`.execute(
    trx,
  )
  if (Number(numAffectedRows ?? 0) !== (rows[0]?.due ?? 0)) throw new StaleImport('a customer was changed meanwhile')
}
