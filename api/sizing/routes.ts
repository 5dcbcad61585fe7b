import { Hono } from 'hono'
import { livestockGroup } from '../../core/catalog/livestock.ts'
import { emptyNeed } from '../../core/quote/empty-draft.ts'
import { resolveConditions } from '../../core/quote/conditions.ts'
import { withAllFigures } from '../../core/sizing/all-figures.ts'
import { sizingReport } from '../../core/sizing/engine.ts'
import { markFaults } from '../../core/sizing/livestock-marks.ts'
import { SizingBody } from '../../core/sizing/schema.ts'
import { withRanges } from '../../core/sizing/sensitivity.ts'
import { getInstallWithGroups } from '../../db/livestock-groups.ts'
import { SizingAnswer } from '../answers/sizing.ts'
import type { Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { invalid } from '../http/problem.ts'
import { valid } from '../http/valid.ts'

export const sizing = new Hono<Env>().post(
  '/',
  operation('computeSizing', {
    summary: 'Sizing report of a build in a room, with the range of every value and what to ask next; nothing is stored',
    tag: 'Sizing',
    answers: { 200: SizingAnswer },
  }),
  valid('json', SizingBody),
  async (c) => {
    const { gear, conditions: exact, livestockId } = c.req.valid('json')
    const install = await getInstallWithGroups(c.get('db'))
    const group = livestockGroup(livestockId, install)
    if (group === undefined) return invalid(c, 'livestockId', 'There is no livestock group with this id.')
    const [fault] = markFaults(group, exact)
    if (fault) return invalid(c, `conditions.${fault.field}`, fault.message)
    const conditions = resolveConditions({ ...emptyNeed(), livestockId, exact }, install)
    const subject = { gear, conditions }
    return c.json(withAllFigures(subject, withRanges(subject, sizingReport(subject))), 200)
  },
)
