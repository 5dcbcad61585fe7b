import { sql, type RawBuilder } from 'kysely'
import type { SpecTest } from '../core/catalog/spec-filter.ts'

/** Sides are stored to the millimetre by some and to the tenth by others: 36 in is 914.4 mm, and 914 mm is meant by it. */
const SLACK_MM = 0.5

/** Compared as JSON values: a figure with a figure, whatever else a product of another kind keeps under the same name. */
const value = (key: string): RawBuilder<unknown> => sql`spec -> ${key}::text`

/** Whether a product's stated spec meets a test; what nobody stated meets none. */
export function meetsTest(test: SpecTest): RawBuilder<boolean> {
  if ('is' in test) {
    return typeof test.is === 'boolean'
      ? sql<boolean>`${value(test.key)} = to_jsonb(${test.is}::boolean)`
      : sql<boolean>`${value(test.key)} = to_jsonb(${test.is}::text)`
  }
  const slack = test.key.endsWith('Mm') ? SLACK_MM : 0
  const ends = [
    ...(test.least === null ? [] : [sql`${value(test.key)} >= to_jsonb(${test.least - slack}::numeric)`]),
    ...(test.most === null ? [] : [sql`${value(test.key)} <= to_jsonb(${test.most + slack}::numeric)`]),
  ]
  return sql<boolean>`(jsonb_typeof(${value(test.key)}) = 'number' and ${sql.join(ends, sql` and `)})`
}
