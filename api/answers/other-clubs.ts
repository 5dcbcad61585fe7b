import * as z from 'zod'
import type { OtherClub, OtherClubRow } from '../../core/other-clubs/other-club.ts'
import { CONDITIONS } from '../../core/pricing/sighting.ts'
import { amount, day, id, instant } from './catalog.ts'
import { answer } from './registry.ts'

const store = z.strictObject({
  key: z.string(),
  name: z.string(),
  town: z.string().nullable(),
  country: z.string(),
  storeId: id.nullable(),
  prices: z.int(),
})
const club = z.strictObject({
  id,
  address: z.string(),
  name: z.string(),
  readAt: instant.nullable(),
  triedAt: instant.nullable(),
  fault: z.string().nullable(),
  prices: z.int(),
  ofOurProducts: z.int(),
  used: z.int(),
  leftOut: z.int(),
  stores: z.array(store),
}) satisfies z.ZodType<OtherClub>
const row = z.strictObject({
  clubName: z.string(),
  storeName: z.string(),
  storeId: id.nullable(),
  condition: z.enum(CONDITIONS),
  priceMinor: amount,
  currency: z.string(),
  seenOn: day,
  lastDay: day.nullable(),
}) satisfies z.ZodType<OtherClubRow>

/** `publishes`: whether this club tells its own prices, at `address`. */
export const OtherClubsAnswer = answer('OtherClubs', z.strictObject({ publishes: z.boolean(), address: z.string(), clubs: z.array(club) }))
export const OtherClubPricesAnswer = answer('OtherClubPrices', z.strictObject({ items: z.array(row) }))
