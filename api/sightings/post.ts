import type { z } from 'zod'
import { addDays, civilDateAt } from '../../core/dates.ts'
import { checkSighting } from '../../core/pricing/check-sighting.ts'
import { doubtOf } from '../../core/pricing/doubt.ts'
import type { SightingInput } from '../../core/pricing/schema.ts'
import { sightingPlace, sightingRecord } from '../../db/sighting-context.ts'
import { findSighting, insertSighting } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { invalid } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'

/** The doubt rules look back 365 days, and the regular price behind them a little further. */
const RECORD_DAYS = 550

/**
 * Takes a sighting, or says why not. A repeat answers with the stored one whatever has changed since: what was taken stays taken.
 */
export async function postSighting(c: Ctx, fields: z.output<typeof SightingInput>) {
  const [place, { record, othersThatDay }] = await Promise.all([
    sightingPlace(c.var.db, fields.productId, fields.storeId),
    sightingRecord(c.var.db, fields, addDays(fields.seenOn, -RECORD_DAYS)),
  ])
  const today = civilDateAt(c.var.deps.clock(), place.store?.timeZone ?? 'UTC')
  const checked = checkSighting(fields, { ...place, today })
  if (!checked.ok && (await findSighting(c.var.db, signedIn(c), fields.id)) === undefined)
    return invalid(c, checked.refusal.field, checked.refusal.words)
  const doubt = doubtOf(fields, record, { currency: place.currency, othersThatDay })
  const taken = await insertSighting(c.var.db, signedIn(c), fields, doubt)
  if (!taken.ok) return refused(c, taken.refusal, 'id')
  return taken.value.repeated ? c.json(taken.value.sighting, 200) : c.json(taken.value.sighting, 201)
}
