import { sql, type Kysely, type RawBuilder, type SelectQueryBuilder, type Selectable } from 'kysely'
import { kindsMeant } from '../core/catalog/kind-words.ts'
import type { Kind } from '../core/catalog/kinds.ts'
import { nearWords, slipsForgiven, type NearWord } from '../core/catalog/near-words.ts'
import { foldText, namedSize, searchTerms, type NamedSize, type SearchTerm } from '../core/catalog/search-terms.ts'
import type { SpecTest } from '../core/catalog/spec-filter.ts'
import type { Database, ProductTable } from './database.ts'
import { containing } from './refusal.ts'
import { meetsTest } from './spec-conditions.ts'

export interface ProductFilter {
  kind?: Kind
  /**
   * Words, each found somewhere in name, maker, number, kind, the kind's other words or look, or as a side in whole inches or centimetres; without regard to case and accents.
   * Where nothing holds them all, words a slip or two away are taken for them.
   */
  q?: string
  archived?: boolean
  /** What its maker states; only with a kind. */
  spec?: readonly SpecTest[]
  limit: number
  offset: number
}

type Condition = RawBuilder<boolean>
/** How one term may be met: as it stands, and by words near to it. */
interface Meeting {
  exact: Condition
  near: NearWord[]
}

/** The text is folded here and not in the statement: a prepared one would fold it again for every row. */
const said = (text: string): Condition => sql<boolean>`search_text like ${containing(text)}`

function saysTerm(term: SearchTerm): Condition {
  const ways = [said(term.text)]
  if (term.parts.length > 0) ways.push(sql<boolean>`(${sql.join(term.parts.map(said), sql` and `)})`)
  if (term.isNumber) ways.push(sql<boolean>`gtin like ${containing(term.text)}`)
  const kinds = kindsMeant(term.text)
  if (kinds.length > 0) ways.push(sql<boolean>`kind in (${sql.join(kinds)})`)
  if (term.side !== null) ways.push(sql<boolean>`search_text like ${`% =${term.side} %`}`)
  return sql<boolean>`(${sql.join(ways, sql` or `)})`
}

/** Makers differ by a centimetre in what they call a size, inches rounded on top. */
const SIZE_SLACK_MM = 15

/** Whether a product is a tank of a size of the trade. */
function isOfSize({ size }: NamedSize): Condition {
  const side = (key: string, mm: number) => sql`abs((spec->>${sql.lit(key)})::numeric - ${sql.lit(mm)}) <= ${sql.lit(SIZE_SLACK_MM)}`
  return sql<boolean>`(kind = 'tank' and coalesce(spec->>'shape', 'rectangular') = 'rectangular' and ${side('lengthMm', size.lengthMm)} and ${side('widthMm', size.widthMm)} and ${side('heightMm', size.heightMm)})`
}

/** All terms met; those that name a size of the trade also by a tank of that size. */
function allMet(meetings: readonly Condition[], size: NamedSize | undefined): Condition {
  if (size === undefined) return sql<boolean>`(${sql.join(meetings, sql` and `)})`
  const naming = meetings.slice(size.from, size.from + size.count)
  const others = meetings.filter((_, index) => index < size.from || index >= size.from + size.count)
  return sql<boolean>`(${sql.join([...others, sql`(${isOfSize(size)} or (${sql.join(naming, sql` and `)}))`], sql` and `)})`
}

/** The very name, then names that begin so, then those in which every term begins a word, then the rest. */
function exactRank(folded: string, terms: readonly SearchTerm[]): RawBuilder<number> {
  const begins = terms.map((term) => sql<boolean>`search_text like ${`% ${containing(term.text).slice(1)}`}`)
  const start = ` ${containing(folded).slice(1)}`
  return sql<number>`case when lower(name) = ${folded} then 0 when search_text like ${start} then 1 when ${sql.join(begins, sql` and `)} then 2 else 3 end`
}

const nearby = (word: NearWord): Condition => sql<boolean>`search_text like ${containing(word.word)}`

function meets({ exact, near }: Meeting): Condition {
  return near.length === 0 ? exact : sql<boolean>`(${sql.join([exact, ...near.map(nearby)], sql` or `)})`
}

/** Fewest slips first: a term as it stands costs none, a word near to it what it is away. */
function nearRank(meetings: readonly Meeting[]): RawBuilder<number> {
  const slips = meetings.map(({ exact, near }) => {
    const levels = [...Map.groupBy(near, (word) => word.slips)].map(
      ([cost, words]) => sql`when ${sql.join(words.map(nearby), sql` or `)} then ${sql.lit(cost)}`,
    )
    return sql`case when ${exact} then 0 ${sql.join(levels, sql` `)} else 3 end`
  })
  return sql<number>`${sql.join(slips, sql` + `)}`
}

/** What somebody may have meant: words of the catalog that share a piece with a misspelt one, compared sign by sign. */
async function nearbyWords(db: Kysely<Database>, term: SearchTerm): Promise<NearWord[]> {
  const forgiven = slipsForgiven(term.text)
  if (forgiven === 0) return []
  const { rows } = await sql<{ word: string }>`select word from search_word
    where pieces && word_pieces(${term.text}) and length(word) >= ${term.text.length - forgiven}`.execute(db)
  return nearWords(term.text, rows.map(({ word }) => word)) // prettier-ignore
}

async function meetingsOf(db: Kysely<Database>, terms: readonly SearchTerm[]): Promise<Meeting[]> {
  const meetings: Meeting[] = []
  for (const term of terms) meetings.push({ exact: saysTerm(term), near: await nearbyWords(db, term) })
  return meetings
}

type Found = Selectable<ProductTable> & { total: number }
export type Narrowed = SelectQueryBuilder<Database, 'product', object>

/** By rank, then by name, with which the text of a search begins. Whole rows are read for the page alone. */
async function pageOf(
  db: Kysely<Database>,
  found: Narrowed,
  rank: RawBuilder<number>,
  filter: ProductFilter,
): Promise<{ rows: Found[]; total: number }> {
  const page = found
    .select(['product.id', rank.as('rank'), 'product.search_text', sql<number>`count(*) over ()`.as('total')])
    .orderBy('rank')
    .orderBy('product.search_text')
    .orderBy('product.id')
    .limit(filter.limit)
    .offset(filter.offset)
  const rows = await db
    .selectFrom(page.as('page'))
    .innerJoin('product', 'product.id', 'page.id')
    .selectAll('product')
    .select('page.total')
    .orderBy('page.rank')
    .orderBy('page.search_text')
    .orderBy('product.id')
    .execute()
  const [first] = rows
  if (first !== undefined || filter.offset === 0) return { rows, total: first?.total ?? 0 }
  const { total } = await found.select((eb) => eb.fn.countAll<number>().as('total')).executeTakeFirstOrThrow()
  return { rows, total }
}

/** One page of what a filter leaves of the catalog: without words by name, with words the best first. */
export async function searchProducts(db: Kysely<Database>, filter: ProductFilter): Promise<{ rows: Found[]; total: number }> {
  let query: Narrowed = db.selectFrom('product').where('archived', '=', filter.archived ?? false)
  if (filter.kind !== undefined) query = query.where('kind', '=', filter.kind)
  for (const test of filter.spec ?? []) query = query.where(meetsTest(test))
  const q = filter.q?.trim() ?? ''
  const terms = searchTerms(q)
  if (terms.length === 0) return pageOf(db, query, sql<number>`0::int`, filter)
  const size = namedSize(terms)
  const exact = await pageOf(db, query.where(allMet(terms.map(saysTerm), size)), exactRank(foldText(q), terms), filter)
  if (exact.total > 0) return exact
  const meetings = await meetingsOf(db, terms)
  if (meetings.every(({ near }) => near.length === 0)) return exact
  return pageOf(db, query.where(allMet(meetings.map(meets), size)), nearRank(meetings), filter)
}

/** Products that words are said of, as a list of products finds them: for what is listed by product and is none. Undefined where nothing was typed. */
export async function productsSaying(db: Kysely<Database>, q: string): Promise<Narrowed | undefined> {
  const terms = searchTerms(q)
  if (terms.length === 0) return undefined
  const size = namedSize(terms)
  const query: Narrowed = db.selectFrom('product')
  const exact = query.where(allMet(terms.map(saysTerm), size))
  if ((await exact.select('product.id').limit(1).executeTakeFirst()) !== undefined) return exact
  return query.where(allMet((await meetingsOf(db, terms)).map(meets), size))
}
