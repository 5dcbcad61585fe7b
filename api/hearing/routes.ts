import { Hono } from 'hono'
import * as z from 'zod'
import { deviceOf } from '../../core/people/device.ts'
import { DeviceInput, MailAddressInput } from '../../core/people/schema.ts'
import { strict } from '../../core/schema.ts'
import { removePersonMail } from '../../db/person-mail.ts'
import { addPushDevice, removePushDevice } from '../../db/push-devices.ts'
import { HearingAnswer } from '../answers/hearing.ts'
import { tokenHash } from '../auth/tokens.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { invalid, problem } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { readEndpoint } from '../outside/endpoint.ts'
import { transact } from '../transact.ts'
import { askToConfirm } from './ask-to-confirm.ts'
import { hearingView, offersPush } from './hearing-view.ts'

const tag = 'How you hear of deals'
const ByDevice = strict('Path', { id: z.string().regex(/^[0-9a-f]{64}$/, { error: 'This is not the id of a device.' }) })

/** Everyone sees and changes their own alone. */
export const hearing = new Hono<Env>()
  .get(
    '/',
    operation('getHearing', { summary: 'How you hear of deals, and what this place offers', tag, answers: { 200: HearingAnswer } }),
    async (c) => c.json(await hearingView(c), 200),
  )
  .put(
    '/mail',
    operation('setOwnMail', {
      summary: 'Give an address to hear of deals at; a mail with a link to confirm it is sent there at once, and nothing else until then',
      tag,
      answers: { 200: HearingAnswer },
      refuses: [409, 429],
    }),
    valid('json', MailAddressInput),
    async (c) => {
      const refusal = await askToConfirm(c, c.req.valid('json').address)
      return refusal ?? c.json(await hearingView(c), 200)
    },
  )
  .delete('/mail', operation('removeOwnMail', { summary: 'Take your address away', tag, answers: { 204: null } }), async (c) => {
    await removePersonMail(c.get('db'), signedIn(c).id)
    return c.body(null, 204)
  })
  .post(
    '/devices',
    operation('addOwnDevice', {
      summary: 'Have this browser told of deals: what its Push API gave',
      tag,
      answers: { 201: HearingAnswer },
      refuses: [409],
    }),
    valid('json', DeviceInput),
    async (c) => {
      const { config, clock } = c.get('deps')
      if (!offersPush(config)) return problem(c, 409, 'not_offered', 'Messages to phones need an https address. Ask the manager.')
      const { endpoint, keys } = c.req.valid('json')
      const read = readEndpoint(endpoint)
      if (!read.ok) return invalid(c, 'endpoint', read.refusal.message)
      const device = deviceOf(c.req.header('user-agent'))
      const subscription = { idHash: tokenHash(endpoint), endpoint, ...keys, device }
      const added = await transact(c.get('db'), (trx) => addPushDevice(trx, signedIn(c).id, subscription, new Date(clock())))
      return added.ok ? c.json(await hearingView(c), 201) : refused(c, added.refusal)
    },
  )
  .delete(
    '/devices/:id',
    operation('removeOwnDevice', { summary: 'Have a device told no more', tag, answers: { 204: null }, refuses: [404] }),
    valid('param', ByDevice),
    async (c) => {
      const removed = await removePushDevice(c.get('db'), signedIn(c).id, c.req.valid('param').id)
      return removed ? c.body(null, 204) : problem(c, 404, 'not_found', 'This device is told nothing any more.')
    },
  )
