import { Hono } from 'hono'
import { livestockGroup } from '../../core/catalog/livestock.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { resolveConditions } from '../../core/quote/conditions.ts'
import { withAllFigures } from '../../core/sizing/all-figures.ts'
import { inspectedReport } from '../../core/sizing/engine.ts'
import { markFaults } from '../../core/sizing/livestock-marks.ts'
import { SizingBody } from '../../core/sizing/schema.ts'
import { withRanges } from '../../core/sizing/sensitivity.ts'
import { getInstallWithGroups } from '../../db/livestock-groups.ts'
import { SizingAnswer } from '../answers/sizing.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { invalid, problemBody, ProblemError } from '../http/problem.ts'
import { tallies } from '../http/tally.ts'
import { valid } from '../http/valid.ts'

/** A program that tries builds one after the other stays under it; more keeps others waiting. */
const MOST_REPORTS = 60
const tallyOf = tallies(60_000)

/** Refuses the sixty-first report of a person within a minute with 429. Errors: ProblemError. */
function demandFewReports(c: Ctx): void {
  const { clock } = c.get('deps')
  const { id } = signedIn(c)
  const tally = tallyOf(c.get('deps'))
  const seconds = tally.waitS(id, MOST_REPORTS, clock())
  if (seconds > 0) {
    const words = `More than ${MOST_REPORTS} sizing reports were asked for within a minute. Wait a minute, then ask again.`
    throw new ProblemError(problemBody(429, 'too_many', words), { 'Retry-After': String(seconds) })
  }
  tally.add(id, clock())
}

export const sizing = new Hono<Env>().post(
  '/',
  operation('computeSizing', {
    summary: 'Sizing report of a build in a room, with the range of every value and what to ask next; nothing is stored',
    tag: 'Sizing',
    answers: { 200: SizingAnswer },
    refuses: [429],
  }),
  valid('json', SizingBody),
  async (c) => {
    demandFewReports(c)
    const { gear, conditions: exact, livestockId } = c.req.valid('json')
    const install = await getInstallWithGroups(c.get('db'))
    const group = livestockGroup(livestockId, install)
    if (group === undefined) return invalid(c, 'livestockId', 'There is no livestock group with this id.')
    const [fault] = markFaults(group, exact)
    if (fault) return invalid(c, `conditions.${fault.field}`, fault.message)
    const conditions = resolveConditions({ ...emptyNeed(), livestockId, exact }, install)
    const subject = { gear, conditions }
    const { report, inspected } = inspectedReport(subject)
    return c.json(withAllFigures(subject, withRanges(subject, report), inspected), 200)
  },
)
