import { AUDIT_SENTENCES, type AuditAction, type AuditSubjectKind } from './audit-actions.ts'
import { currencyExponent, sayMoney } from '../money.ts'
import { IMPORT_COUNTS, type AuditChange, type AuditChanges, type AuditValue } from './audit-changes.ts'

/** An entry of the trail as a reader gets it. An action of a later version may be unknown here. */
export interface AuditLine {
  action: string
  actor: { id: string; name: string } | null
  subject: { kind: string; id: string | null; name: string | null }
}

/** The kinds of things in words, for a list to choose from. */
export const AUDIT_SUBJECT_WORDS: Record<AuditSubjectKind, string> = {
  person: 'People', invitation: 'Invitations', install: 'Settings', product: 'Products', store: 'Stores', region: 'Regions', currency_rate: 'Rates of exchange', other_club: 'Other clubs', livestock_group: 'Livestock groups', sighting: 'Sightings',
  customer: 'Customers', quote: 'Quotes and setups', backup: 'Backups',
} // prettier-ignore

/** Nobody signed in: the service did it by itself, or somebody at the computer it runs on. */
const NOBODY = 'Someone at the server’s console, or the service itself,'

/** Things whose name alone does not tell what they are. */
const NAMED_WITH_KIND: Record<string, string> = { store: 'the store ', region: 'the region ', other_club: 'the other club ' }

function whatOf({ actor, subject }: AuditLine): string {
  const { kind, name, id } = subject
  if (kind === 'person') return id !== null && id === actor?.id ? 'themselves' : (name ?? 'a person')
  if (kind === 'customer') return 'a customer'
  if (kind === 'quote') return name === null ? 'a quote without a number' : `quote ${name}`
  if (kind === 'install') return 'the settings'
  if (kind === 'currency_rate') return `the rate of exchange of ${name ?? 'a currency'}`
  return name === null ? `a ${kind.replaceAll('_', ' ')}` : `${NAMED_WITH_KIND[kind] ?? ''}“${name}”`
}

/**
 * An entry as a sentence, without its full stop.
 *
 * @example sayAudit({ action: 'quote_issued', actor: { id: '1', name: 'Mara' }, subject: { kind: 'quote', id: '2', name: '2026-0147' } })
 * // 'Mara issued quote 2026-0147'
 */
export function sayAudit(line: AuditLine): string {
  const sentence = AUDIT_SENTENCES[line.action as AuditAction] ?? `{who} did “${line.action.replaceAll('_', ' ')}” to {what}`
  // In one pass: a name may itself look like a blank.
  return sentence.replace(/\{(who|what)\}/g, (_, blank) => (blank === 'who' ? (line.actor?.name ?? NOBODY) : whatOf(line)))
}

/** @example sayField('spec.heightMm') // 'height (mm)' */
export function sayField(field: string): string {
  const [last = field] = field.split('.').slice(-1)
  const own = FIELD_WORDS.get(last)
  if (own !== undefined) return own
  const unit = /(Mm|Cm|Kg|L|W|V|A|C)$/.exec(last)?.[1]
  const bare = unit === undefined || unit.length === last.length ? last : last.slice(0, -unit.length)
  const words = bare.replace(/Minor$/, '').replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase() // prettier-ignore
  const told = last.endsWith('Minor') ? 'minor units' : bare === last ? undefined : UNITS[unit ?? '']
  return told === undefined ? words : `${words} (${told})`
}
/** What its name would say wrongly: a rate is read off a source on a day, nobody saw it at a store. */
const FIELD_WORDS: ReadonlyMap<string, string> = new Map([['seenOn', 'read on']])
const UNITS: Record<string, string> = { Mm: 'mm', Cm: 'cm', Kg: 'kg', L: 'L', W: 'W', V: 'V', A: 'A', C: '°C' }

/** The name of a file by what is in it: no reader can tell one from another. */
const isHash = (value: AuditValue | undefined): boolean => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value)

function sayValue(value: AuditValue): string {
  if (isHash(value)) return 'a file'
  if (value === null || value === '') return 'nothing'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return String(value)
}

/** A kilowatt hour may cost parts of the smallest coin. */
const sayAmount = (minor: number, currency: string): string =>
  Number.isInteger(minor)
    ? sayMoney(minor, currency, { symbol: false })
    : String(Number((minor / 10 ** currencyExponent(currency)).toFixed(6)))

/**
 * What happened to one field; an amount in money of the currency, where that is known.
 *
 * @example sayChange({ field: 'returnDays', before: 30, after: 14 }) // 'return days: 30, now 14'
 * @example sayChange({ field: 'energyPriceMinor', before: 17, after: 18 }, 'USD') // 'energy price: 0.17, now 0.18'
 */
export function sayChange(change: AuditChange, currency?: string): string {
  const { field } = change
  const inMoney = (value: AuditValue | undefined): AuditValue | undefined =>
    typeof value === 'number' && currency !== undefined ? sayAmount(value, currency) : value
  const isMoney = field.endsWith('Minor') && currency !== undefined
  const name = isMoney ? sayField(field.slice(0, -'Minor'.length)) : sayField(field)
  const [before, after] = isMoney ? [inMoney(change.before), inMoney(change.after)] : [change.before, change.after]
  if (before === undefined && after === undefined) return name
  if (isHash(before) && isHash(after)) return `${name}: another one`
  if (before === undefined) return `${name}: ${sayValue(after ?? null)}`
  return `${name}: ${sayValue(before)}, now ${sayValue(after ?? null)}`
}

const COUNT_WORDS: Record<(typeof IMPORT_COUNTS)[number], string> = { unchanged: 'unchanged', creates: 'new', updates: 'changed' }

/** Of an import there is nothing but its counts, all three. */
const isCounted = (changes: AuditChanges): boolean =>
  changes.length === IMPORT_COUNTS.length && IMPORT_COUNTS.every((count) => changes.some(({ field }) => field === count))

function sayCounts(changes: AuditChanges): string {
  const counts = IMPORT_COUNTS.map((count) => ({ words: COUNT_WORDS[count], rows: changes.find(({ field }) => field === count)?.after }))
  if (counts.some(({ rows }) => typeof rows !== 'number')) return 'how many rows was not kept'
  const said = counts.filter(({ rows }) => rows !== 0).map(({ words, rows }) => `${rows?.toLocaleString('en-US')} ${words}`)
  return said.length === 0 ? 'no rows' : said.join(', ')
}

/**
 * What happened to each field, in words; an import is told by its counts, in one.
 *
 * @example sayChanges([{ field: 'creates', after: 2 }, { field: 'unchanged', after: 9 }, { field: 'updates', after: 0 }]) // ['9 unchanged, 2 new']
 */
export const sayChanges = (changes: AuditChanges, currency?: string): string[] =>
  isCounted(changes) ? [sayCounts(changes)] : changes.map((change) => sayChange(change, currency))
