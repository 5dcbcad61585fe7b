import type { WorkedBuild } from '../../../core/quote/revision.ts'
import type { Want } from './meets-want.ts'
import { slotOfCheck } from './slot-findings.ts'

type Reported = Pick<WorkedBuild, 'report'>

/**
 * Whether a build with a product tried in it is rid of what the finding asks for: its check fails no longer, or asks for something in another slot next, and no
 * other check of the slot has begun to fail. What failed before for a reason of its own is no fault of the product.
 *
 * @example settlesWant(build, withFullStand, { slot: 'carry_tank', quantity: 1, minimum: {}, top: 'full', check: 'stand_bedding' }) // true: next it wants a mat
 */
export function settlesWant(before: Reported, tried: Reported, want: Want): boolean {
  const failing = new Set(before.report.findings.filter(({ verdict }) => verdict === 'does_not_fit').map(({ check }) => check))
  return !tried.report.findings.some(({ check, verdict, action }) => {
    const concerns = check === want.check || (slotOfCheck(check) === want.slot && !failing.has(check))
    return verdict === 'does_not_fit' && concerns && (action?.want?.slot ?? want.slot) === want.slot
  })
}
