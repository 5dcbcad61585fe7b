import { startupPlan } from '../startup/startup-plan.ts'
import { withAllFigures } from '../sizing/all-figures.ts'
import { withRanges } from '../sizing/sensitivity.ts'
import { documentUnits } from './document-units.ts'
import { kitsApart, sayKitApart } from './kit-apart.ts'
import type { AssembledBuild, QuoteInputs } from './revision.ts'
import { sizedSubject, workBuild } from './worked-build.ts'

/**
 * One build as it is issued: worked out, its report with ranges, questions and every figure, and with its startup plan.
 *
 * Range: index 0 to builds − 1. Errors: RangeError beyond it.
 */
export function assembleBuild(inputs: QuoteInputs, index: number): AssembledBuild {
  const subject = sizedSubject(inputs, index)
  if (subject === undefined) throw new RangeError(`No build ${index}`)
  const build = workBuild(inputs, index)
  const install = { ...inputs.install, units: documentUnits(inputs) }
  const kits = kitsApart(inputs, index)
    .map((kit) => sayKitApart(kit, install.currency))
    .filter((words) => words !== '')
  const report = withAllFigures(subject, withRanges(subject, build.report))
  return {
    ...build,
    ...(kits.length > 0 && { kits }),
    report,
    plan: startupPlan({ ...subject, report, install }),
  }
}
