import type { Install } from '../../core/install.ts'
import { idInToken, isLinkToken } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { installToday } from '../day.ts'
import { demandFewWrites } from './link-writes.ts'
import { problem } from './problem.ts'
import { noteWrongLink } from './wrong-links.ts'

interface LinkKind<Linked> {
  purpose: 'quote' | 'setup'
  find: (id: string) => Promise<Linked | undefined>
  /** A link that opens what is too old to be shown. `today` is the install's day. */
  isOver: (linked: Linked, today: string) => boolean
}

export type OpenedLink<Linked> =
  { found: true; linked: Linked; install: Install; today: string } | { found: false; gone: boolean; install: Install }

/** What a link opens: missing for a forged or revoked one, gone for one that is over. Wrong ones and writes are counted, and too many refused. */
export async function openLink<Linked extends { id: string; linkVersion: number }>(
  c: Ctx,
  token: string,
  { purpose, find, isOver }: LinkKind<Linked>,
): Promise<OpenedLink<Linked>> {
  const { install, today } = await installToday(c)
  const id = idInToken(token)
  const linked = id === undefined ? undefined : await find(id)
  if (linked === undefined || !isLinkToken(c.get('deps').linkKey, purpose, linked.id, linked.linkVersion, token)) {
    noteWrongLink(c)
    return { found: false, gone: false, install }
  }
  if (isOver(linked, today)) return { found: false, gone: true, install }
  demandFewWrites(c, linked.id)
  return { found: true, linked, install, today }
}

/** The answer where there is nothing to open. */
export const linkRefused = (c: Ctx, gone: boolean) =>
  gone
    ? problem(c, 410, 'gone', 'This link has expired. Ask where you got it for a new one.')
    : problem(c, 404, 'not_found', 'This link opens nothing. It may have been replaced by a newer one.')
