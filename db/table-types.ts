import { sql, type Kysely } from 'kysely'
import type { Database } from './database.ts'

/** What the database cannot say about a column: the name of the domain type that it holds, and the file of core it comes from. */
const DOMAIN_TYPES: Record<string, { type: string; from: string }> = {
  'audit_entry.action': { type: 'AuditAction', from: 'audit/audit-actions.ts' },
  'audit_entry.subject_kind': { type: 'AuditSubjectKind', from: 'audit/audit-actions.ts' },
  'audit_entry.changes': { type: 'AuditChanges', from: 'audit/audit-changes.ts' },
  'customer.gear': { type: 'OwnedLine[]', from: 'quote/draft.ts' },
  'install.mode': { type: "Install['mode']", from: 'install.ts' },
  'install.paper': { type: "Install['paper']", from: 'install.ts' },
  'install.units': { type: 'ReaderUnits', from: 'units/quantity.ts' },
  'session.device': { type: "DeviceWord | ''", from: 'people/device.ts' },
  'push_device.device': { type: 'DeviceWord', from: 'people/device.ts' },
  'person.role': { type: 'Role', from: 'people/roles.ts' },
  'person.units': { type: 'ReaderUnits', from: 'units/quantity.ts' },
  'one_use_link.role': { type: 'Role', from: 'people/roles.ts' },
  'store.kind': { type: "Store['kind']", from: 'catalog/store.ts' },
  'store.delivery': { type: 'DeliveryRule', from: 'catalog/store.ts' },
  'store.other_rates': { type: 'StoreRate[]', from: 'catalog/store.ts' },
  'product.kind': { type: 'Kind', from: 'catalog/kinds.ts' },
  'product.spec': { type: 'Spec', from: 'catalog/spec.ts' },
  'kit_part.part_kind': { type: 'Kind', from: 'catalog/kinds.ts' },
  'sighting.condition': { type: 'Condition', from: 'pricing/sighting.ts' },
  'sighting.evidence': { type: "Sighting['evidence']", from: 'pricing/sighting.ts' },
  'sighting.doubt': { type: 'Doubt', from: 'pricing/sighting.ts' },
  'quote.state': { type: 'QuoteState', from: 'quote/draft.ts' },
  'quote.draft': { type: 'QuoteDraft', from: 'quote/draft.ts' },
  'quote_revision.document': { type: 'RevisionDocument', from: 'quote/revision.ts' },
  'quote_revision.summary': { type: "Pick<RevisionSummary, 'totals'>", from: 'quote/quote-view.ts' },
  'quote_answer.answer': { type: "QuoteAnswer['answer']", from: 'quote/quote-view.ts' },
  'quote_answer.letter': { type: 'BuildLetter', from: 'quote/draft.ts' },
  'setup.letter': { type: 'BuildLetter', from: 'quote/draft.ts' },
  'job.payload': { type: 'JsonObject', from: 'jobs/job.ts' },
  'job.position': { type: 'JsonObject', from: 'jobs/job.ts' },
  'job.outcome': { type: 'JsonObject', from: 'jobs/job.ts' },
  'job.state': { type: 'JobState', from: 'jobs/job.ts' },
  'sale_time.rule': { type: 'SaleTimeRule', from: 'pricing/sale-time.ts' },
  'price_snapshot.learned': { type: 'LearnedHead', from: 'pricing/outlook/learned.ts' },
  'price_snapshot_product.learned': { type: 'ProductLearned', from: 'pricing/outlook/learned.ts' },
  'watch.requirement': { type: 'WatchedRequirement', from: 'pricing/watches/watch.ts' },
  'watch.conditions': { type: 'WatchedCondition[]', from: 'pricing/watches/watch.ts' },
  'said_there.condition': { type: 'Condition', from: 'pricing/sighting.ts' },
  'notice.condition': { type: 'Condition', from: 'pricing/sighting.ts' },
  'other_club_price.condition': { type: 'Condition', from: 'pricing/sighting.ts' },
  'import_row.data': { type: 'JsonObject', from: 'jobs/job.ts' },
}
/** Words that only the tables use: spelled out from their check. */
const WORDS: Record<string, string> = {
  'one_use_link.purpose': "'first_manager' | 'invite' | 'new_password'",
  'livestock_group.water': "'fresh' | 'salt'",
  'livestock_group.standing': "'edited' | 'own'",
  'sighting_vote.vote': "'confirm' | 'dispute'",
  'notice.answer': "'still_there' | 'gone'",
  'notice_delivery.channel': "'email' | 'push'",
  'notice_delivery.state': "'waiting' | 'sent' | 'failed' | 'given_up'",
  'import_row.action': "'create' | 'update' | 'same'",
}
const SCALARS: Record<string, string> = {
  ARRAY: 'string[]',
  bytea: 'Uint8Array',
  boolean: 'boolean',
  date: 'string',
  'double precision': 'number',
  integer: 'number',
  bigint: 'number',
  text: 'string',
  uuid: 'string',
  'timestamp with time zone': 'Instant',
}

interface Column {
  table: string
  column: string
  type: string
  nullable: boolean
  /** Left out on insert: it has a default. */
  optional: boolean
  /** Never written: the database computes it. */
  computed: boolean
}

/** The text of database.ts for a migrated database. Errors: throws on a column of a type this file does not know, or a name here that is no column. */
export async function tableTypes(db: Kysely<Database>): Promise<string> {
  const columns = await columnsOf(db)
  const known = new Set(columns.map((column) => `${column.table}.${column.column}`))
  for (const name of [...Object.keys(DOMAIN_TYPES), ...Object.keys(WORDS)]) if (!known.has(name)) throw new Error(`${name} is no column.`)
  const tables = Map.groupBy(columns, (column) => column.table)
  const bodies = [...tables].map(([table, own]) => `export interface ${pascal(table)}Table {\n${own.map(lineOf).join('\n')}\n}`)
  const list = [...tables.keys()].map((table) => `  ${table}: ${pascal(table)}Table`)
  return [
    '// Generated from the migrated database by `npm run generate`. Do not edit.',
    ["import type { ColumnType, Generated, GeneratedAlways } from 'kysely'", ...imports()].join('\n'),
    '/** Read as Date on both engines. */\nexport type Instant = ColumnType<Date, Date | string, Date | string>',
    ...bodies.map((body) => body.replaceAll('Generated<Instant>', 'ColumnType<Date, Date | string | undefined, Date | string>')),
    `export interface Database {\n${list.join('\n')}\n}`,
    `/** Names of our own tables, where others may lie beside them. */\nexport const TABLES: ReadonlyArray<keyof Database> = ${JSON.stringify([...tables.keys()])}\n`,
  ].join('\n\n')
}

async function columnsOf(db: Kysely<Database>): Promise<Column[]> {
  const { rows } = await sql<Column>`
    select table_name as "table", column_name as "column", data_type as "type", is_nullable = 'YES' as nullable,
      column_default is not null as optional, is_generated = 'ALWAYS' or is_identity = 'YES' as computed
    from information_schema.columns where table_schema = 'public' and table_name not like 'kysely%'
      and not (select relispartition from pg_class where oid = format('%I.%I', table_schema, table_name)::regclass)
    order by table_name, ordinal_position`.execute(db)
  return rows
}

function lineOf(column: Column): string {
  const name = `${column.table}.${column.column}`
  const scalar = DOMAIN_TYPES[name]?.type ?? WORDS[name] ?? SCALARS[column.type]
  if (scalar === undefined) throw new Error(`${name} is ${column.type}: say in table-types.ts what it is in TypeScript.`)
  const type = column.nullable ? `${scalar} | null` : scalar
  if (column.computed) return `  ${column.column}: GeneratedAlways<${type}>`
  return `  ${column.column}: ${column.optional ? `Generated<${type}>` : type}`
}

function imports(): string[] {
  const byFile = Map.groupBy(Object.values(DOMAIN_TYPES), (domain) => domain.from)
  return [...byFile].map(([file, used]) => {
    const names = new Set(
      used.flatMap((domain) => domain.type.match(/\b[A-Z]\w+/g)?.filter((word) => !['Pick', 'Omit'].includes(word)) ?? []),
    )
    return `import type { ${[...names].toSorted().join(', ')} } from '../core/${file}'`
  })
}

const pascal = (name: string): string => name.replace(/(^|_)([a-z])/g, (_, _dash, letter: string) => letter.toUpperCase())
