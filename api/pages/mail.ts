import { Hono } from 'hono'
import { getInstall } from '../../db/install.ts'
import { confirmPersonMail, findMailToConfirm, findPersonMail, removePersonMail } from '../../db/person-mail.ts'
import { mailPage } from '../../web/pages/mail-page.ts'
import { tokenHash } from '../auth/tokens.ts'
import type { Ctx, Env } from '../context.ts'
import { keepPrivate, pagePolicy, setPolicy } from '../http/headers.ts'
import { operation } from '../http/operation.ts'
import { noteWrongLink } from '../http/wrong-links.ts'
import { endsMail, readStopLink } from '../mail/stop-link.ts'

const tag = 'Pages'
const page = { tag, hide: true, answers: { 200: 'text/html' } }

function begin(c: Ctx): string {
  keepPrivate(c)
  setPolicy(c, pagePolicy())
  return c.req.param('token') ?? ''
}

async function show(c: Ctx, state: Parameters<typeof mailPage>[0]['state']) {
  const { name: installName } = await getInstall(c.get('db'))
  if (state.what === 'over') noteWrongLink(c)
  return c.html(mailPage({ installName, state }), state.what === 'over' || state.what === 'renewed' ? 410 : 200)
}

const now = (c: Ctx): Date => new Date(c.get('deps').clock())

/** Whose mail a link ends; `over` where it is none of ours, `stopped` where nobody gets any, `renewed` where it is of an address of before. */
async function stopped(c: Ctx, token: string): Promise<{ what: 'ends'; personId: string } | { what: 'over' | 'stopped' | 'renewed' }> {
  const link = readStopLink(c.get('deps').linkKey, token)
  if (link === undefined) return { what: 'over' }
  const own = await findPersonMail(c.get('db'), link.personId)
  if (own === undefined) return { what: 'stopped' }
  return endsMail(link, own, now(c)) ? { what: 'ends', personId: link.personId } : { what: 'renewed' }
}

export const mailPages = new Hono<Env>()
  .get('/confirm/:token', operation('showConfirmPage', { ...page, summary: 'Whether deals may come to an address' }), async (c) => {
    const token = begin(c)
    const address = await findMailToConfirm(c.get('db'), tokenHash(token), now(c))
    return show(c, address === undefined ? { what: 'over' } : { what: 'ask_confirm', address, path: `/m/confirm/${token}` })
  })
  .post('/confirm/:token', operation('confirmOnPage', { ...page, summary: 'Confirms an address, once' }), async (c) => {
    const address = await confirmPersonMail(c.get('db'), tokenHash(begin(c)), now(c))
    return show(c, address === undefined ? { what: 'over' } : { what: 'confirmed', address })
  })
  .get('/stop/:token', operation('showStopPage', { ...page, summary: 'Whether mail should end' }), async (c) => {
    const token = begin(c)
    const found = await stopped(c, token)
    return show(c, found.what === 'ends' ? { what: 'ask_stop', path: `/m/stop/${token}` } : { what: found.what })
  })
  // RFC 8058, 3.1: a mail program posts here by itself at one click. It has no cookie, and is answered without a redirect.
  .post('/stop/:token', operation('stopOnPage', { ...page, summary: 'Ends mail and deletes the address' }), async (c) => {
    const found = await stopped(c, begin(c))
    if (found.what !== 'ends') return show(c, { what: found.what })
    await removePersonMail(c.get('db'), found.personId)
    return show(c, { what: 'stopped' })
  })
