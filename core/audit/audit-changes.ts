import type { AuditSubjectKind } from './audit-actions.ts'

/** One field of a change. Without `before` and `after` where the values are nobody's business later: the field changed, no more. */
export interface AuditChange {
  field: string
  before?: AuditValue
  after?: AuditValue
}
export type AuditChanges = readonly AuditChange[]
export type AuditValue = string | number | boolean | null

/** How many rows an import wrote: about nobody, whatever the rows are about. */
export const IMPORT_COUNTS = ['unchanged', 'creates', 'updates'] as const

/** What of a thing is known not to be about a person. Everything else of these is told by the field's name alone. */
const OPEN_FIELDS: Partial<Record<AuditSubjectKind, readonly string[]>> = {
  person: ['role', 'disabled', 'sightings'],
  invitation: ['role'],
  customer: IMPORT_COUNTS,
}
/** Free text, in which anybody may have written anything. */
const FREE_TEXT = new Set(['note', 'contact', 'reach', 'draft'])
/** A trail is read line by line: what is longer is told by the field's name alone. */
const LONGEST_VALUE = 200
/** Bookkeeping, not a change that anybody made. */
const UNTOLD = new Set(['id', 'version'])

const isTold = (kind: AuditSubjectKind, field: string): boolean =>
  (OPEN_FIELDS[kind]?.includes(field) ?? true) && !FREE_TEXT.has(field.split('.').at(-1) ?? field)

const isPlain = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)

/** A thing as a flat list of its fields, one level into its parts: `spec.lengthMm`. */
function flat(thing: object): Map<string, unknown> {
  return new Map(
    Object.entries(thing).flatMap(([key, value]): Array<[string, unknown]> => {
      if (UNTOLD.has(key)) return []
      return isPlain(value) ? Object.entries(value).map(([part, inner]) => [`${key}.${part}`, inner]) : [[key, value]]
    }),
  )
}

/** A value as the trail keeps it; undefined where it is too long to be read. */
function kept(value: unknown): AuditValue | undefined {
  if (value === undefined || value === null) return null
  if (typeof value === 'number' || typeof value === 'boolean') return value
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  return text.length <= LONGEST_VALUE ? text : undefined
}

/**
 * The fields in which a thing differs before and after, in the order of their names; all of them where there was nothing before.
 * Values stand beside a field only where they are not about a person.
 *
 * @example auditChanges('person', { role: 'member', name: 'A' }, { role: 'advisor', name: 'B' })
 * // [{ field: 'name' }, { field: 'role', before: 'member', after: 'advisor' }]
 */
export function auditChanges(kind: AuditSubjectKind, before: object | undefined, after: object | undefined): AuditChange[] {
  const [was, is] = [flat(before ?? {}), flat(after ?? {})]
  const fields = [...new Set([...was.keys(), ...is.keys()])].toSorted()
  return fields.flatMap((field): AuditChange[] => {
    const [old, now] = [was.get(field), is.get(field)]
    if (JSON.stringify(old ?? null) === JSON.stringify(now ?? null)) return []
    const [keptOld, keptNow] = [kept(old), kept(now)]
    if (!isTold(kind, field) || keptOld === undefined || keptNow === undefined) return [{ field }]
    return [{ field, ...(before === undefined ? {} : { before: keptOld }), ...(after === undefined ? {} : { after: keptNow }) }]
  })
}
