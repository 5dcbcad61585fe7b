import { Hono } from 'hono'
import { OLD_RATE_DAYS, type CurrencyRate } from '../../core/pricing/currency-rate.ts'
import { CurrencyRateInput } from '../../core/pricing/schema.ts'
import { ok } from '../../core/result.ts'
import { audit } from '../../db/audit.ts'
import { enterCurrencyRate, listCurrencyRates } from '../../db/currency-rates.ts'
import { CurrencyRatesAnswer } from '../answers/pricing.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { operation } from '../http/operation.ts'
import { invalid } from '../http/problem.ts'
import { valid } from '../http/valid.ts'
import { transact } from '../transact.ts'

const tag = 'Stores'
const all = async (c: Ctx) => ({ items: await listCurrencyRates(c.get('db')), oldAfterDays: OLD_RATE_DAYS })

/** Of a rate, what the trail keeps; its currency names the entry. */
const read = ({ rate, seenOn, source }: CurrencyRate) => ({ rate, seenOn, source })

/** What foreign currencies are worth, as the manager read it off a source on a day. */
export const currencyRates = new Hono<Env>()
  .get(
    '/',
    operation('listCurrencyRates', { summary: 'Newest rate of each foreign currency', tag, answers: { 200: CurrencyRatesAnswer } }),
    async (c) => c.json(await all(c), 200),
  )
  .post(
    '/',
    operation('enterCurrencyRate', { summary: 'Enter a dated rate of exchange', tag, answers: { 200: CurrencyRatesAnswer } }),
    valid('json', CurrencyRateInput),
    async (c) => {
      const rate = c.req.valid('json')
      const { install, today } = await installToday(c)
      if (rate.currency === install.currency)
        return invalid(c, 'currency', `${rate.currency} is the currency of this install, so that it needs no rate. Choose a foreign one.`)
      if (rate.seenOn > today)
        return invalid(c, 'seenOn', `The rate is of ${rate.seenOn}, which is still to come. Choose ${today} or earlier.`)
      await transact(c.get('db'), async (trx) => {
        const before = (await listCurrencyRates(trx)).find(({ currency }) => currency === rate.currency)
        await enterCurrencyRate(trx, signedIn(c), rate)
        const subject = { kind: 'currency_rate', name: rate.currency } as const
        await audit(trx, {
          actor: signedIn(c),
          action: 'currency_rate_entered',
          subject,
          ...(before && { before: read(before) }),
          after: read(rate),
        })
        return ok(null)
      })
      return c.json(await all(c), 200)
    },
  )
