import { Hono } from 'hono'
import { getInstall } from '../../db/install.ts'
import { confirmPersonMail, findMailToConfirm, findPersonMail, removePersonMail } from '../../db/person-mail.ts'
import { mailPage } from '../../web/pages/mail-page.ts'
import { idInToken, isLinkToken, linkToken, tokenHash } from '../auth/tokens.ts'
import type { Ctx, Env } from '../context.ts'
import { keepPrivate, pagePolicy, setPolicy } from '../http/headers.ts'
import { operation } from '../http/operation.ts'
import { noteWrongLink } from '../http/wrong-links.ts'

const tag = 'Pages'
const page = { tag, hide: true, answers: { 200: 'text/html' } }
/** A link that ends mail is good for as long as the mail that it stands in is kept. */
const EVERY_MAIL = 1

/** Where the one click of a mail that ends it leads; needs no sign-in. */
export const stopUrlOf = (origin: string, linkKey: Uint8Array, personId: string): string =>
  `${origin}/m/stop/${linkToken(linkKey, 'mail', personId, EVERY_MAIL)}`

function begin(c: Ctx): string {
  keepPrivate(c)
  setPolicy(c, pagePolicy())
  return c.req.param('token') ?? ''
}

async function show(c: Ctx, state: Parameters<typeof mailPage>[0]['state']) {
  const { name: installName } = await getInstall(c.get('db'))
  if (state.what === 'over') noteWrongLink(c)
  return c.html(mailPage({ installName, state }), state.what === 'over' ? 410 : 200)
}

const now = (c: Ctx): Date => new Date(c.get('deps').clock())

/** Whose mail a token ends; undefined where it is none of ours. */
function personOf(c: Ctx, token: string): string | undefined {
  const id = idInToken(token)
  return id !== undefined && isLinkToken(c.get('deps').linkKey, 'mail', id, EVERY_MAIL, token) ? id : undefined
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
    const personId = personOf(c, token)
    if (personId === undefined) return show(c, { what: 'over' })
    const own = await findPersonMail(c.get('db'), personId)
    return show(c, own === undefined ? { what: 'stopped' } : { what: 'ask_stop', path: `/m/stop/${token}` })
  })
  // RFC 8058, 3.1: a mail program posts here by itself at one click. It has no cookie, and is answered without a redirect.
  .post('/stop/:token', operation('stopOnPage', { ...page, summary: 'Ends mail and deletes the address' }), async (c) => {
    const personId = personOf(c, begin(c))
    if (personId === undefined) return show(c, { what: 'over' })
    await removePersonMail(c.get('db'), personId)
    return show(c, { what: 'stopped' })
  })
