import type { z } from 'zod'
import { addDays, civilDateAt } from '../../core/dates.ts'
import { checkSighting } from '../../core/pricing/check-sighting.ts'
import { doubtOf } from '../../core/pricing/doubt.ts'
import type { SightingInput } from '../../core/pricing/schema.ts'
import type { Doubt, SeenPrice } from '../../core/pricing/sighting.ts'
import { samePriceThatDay, sightingContext } from '../../db/sighting-context.ts'
import { findSighting, insertSighting } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { invalid } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'

type Posted = z.output<typeof SightingInput>

/** The doubt rules look back this far. */
const RECORD_DAYS = 365

/** Only a doubted price asks what else was seen that day: most are not, and a phone waits for the answer. */
async function doubtAbout(c: Ctx, fields: Posted, record: SeenPrice[], money: { currency: string; home: string }): Promise<Doubt | null> {
  const doubt = doubtOf(fields, record, { ...money, othersThatDay: [] })
  return doubt && doubtOf(fields, record, { ...money, othersThatDay: await samePriceThatDay(c.get('db'), fields) })
}

/**
 * Takes a sighting, or says why not. A repeat answers with the stored one whatever has changed since: what was taken stays taken.
 */
export async function postSighting(c: Ctx, fields: Posted) {
  const since = addDays(fields.seenOn, -RECORD_DAYS)
  const { product, store, record, currency, home } = await sightingContext(c.get('db'), fields.productId, fields.storeId, since)
  const today = civilDateAt(c.get('deps').clock(), store?.timeZone ?? 'UTC')
  const checked = checkSighting(fields, { product, store, today })
  if (!checked.ok && (await findSighting(c.get('db'), signedIn(c), fields.id)) === undefined)
    return invalid(c, checked.refusal.field, checked.refusal.words)
  const doubt = await doubtAbout(c, fields, record, { currency, home })
  const taken = await insertSighting(c.get('db'), signedIn(c), fields, doubt)
  if (!taken.ok) return refused(c, taken.refusal, 'id')
  return taken.value.repeated ? c.json(taken.value.sighting, 200) : c.json(taken.value.sighting, 201)
}
