import type { z } from 'zod'
import { addDays, civilDateAt } from '../../core/dates.ts'
import { checkSighting } from '../../core/pricing/check-sighting.ts'
import { doubtOf } from '../../core/pricing/doubt.ts'
import { SUMMARY_DAYS } from '../../core/pricing/pair-summary.ts'
import type { SightingInput } from '../../core/pricing/schema.ts'
import type { SightingRow } from '../../core/pricing/record.ts'
import type { Doubt } from '../../core/pricing/sighting.ts'
import { refuse, type Result } from '../../core/result.ts'
import { basisOf, samePriceThatDay, sightingContext, type SightingContext } from '../../db/sighting-context.ts'
import { findSighting, insertSighting } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { refused, type SaidRefusal } from '../http/refusal.ts'

type Posted = z.output<typeof SightingInput>
interface Taken {
  sighting: SightingRow
  repeated: boolean
}

/** The doubt rules look back a year, the summary a year and a half. */
const RECORD_DAYS = SUMMARY_DAYS

/** Only a doubted price asks what else was seen that day: most are not, and a phone waits for the answer. */
async function doubtAbout(c: Ctx, fields: Posted, { record, currency, home, trust }: SightingContext): Promise<Doubt | null> {
  const doubt = doubtOf(fields, record, { currency, home, trust, othersThatDay: [] })
  return doubt && doubtOf(fields, record, { currency, home, trust, othersThatDay: await samePriceThatDay(c.get('db'), fields) })
}

/**
 * Takes a sighting, or says why not. A repeat answers with the stored one whatever has changed since: what was taken stays taken.
 */
export async function postSighting(c: Ctx, fields: Posted) {
  const taken = await takeSighting(c, fields)
  if (!taken.ok) return refused(c, taken.refusal, 'id')
  return taken.value.repeated ? c.json(taken.value.sighting, 200) : c.json(taken.value.sighting, 201)
}

/** The same for whatever posts one on somebody's behalf. Errors: those of `checkSighting` and of `insertSighting`. */
export async function takeSighting(c: Ctx, fields: Posted): Promise<Result<Taken, SaidRefusal>> {
  const since = addDays(fields.seenOn, -RECORD_DAYS)
  const context = await sightingContext(c.get('db'), { ...fields, reporterId: signedIn(c).id }, since)
  const { product, store } = context
  const today = civilDateAt(c.get('deps').clock(), store?.timeZone ?? 'UTC')
  const checked = checkSighting(fields, { product, store, today })
  if (!checked.ok && (await findSighting(c.get('db'), signedIn(c), fields.id)) === undefined)
    return refuse({ code: 'invalid', field: checked.refusal.field, message: checked.refusal.words })
  const doubt = await doubtAbout(c, fields, context)
  return insertSighting(c.get('db'), signedIn(c), fields, doubt, basisOf(context, fields, doubt))
}
