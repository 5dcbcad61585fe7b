import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { beforeSteps } from './before-steps.ts'
import { cycleSteps } from './cycle-steps.ts'
import { fillSteps } from './fill-steps.ts'
import { firstFishSteps } from './first-fish-steps.ts'
import { fitOutSteps } from './fit-out-steps.ts'
import { leakTestSteps } from './leak-test-steps.ts'
import { placeSteps } from './place-steps.ts'
import { powerSteps } from './power-steps.ts'
import { readingMarks } from './reading-marks.ts'
import type { SetupPlan } from './setup-plan.ts'
import type { StartupSubject } from './startup-subject.ts'
import { litres } from './tank-facts.ts'

/** In the order they are done. */
const GROUPS = [beforeSteps, placeSteps, leakTestSteps, fitOutSteps, powerSteps, fillSteps, cycleSteps, firstFishSteps]

/**
 * The startup checklist of one build in one room: every step with its amounts computed for this tank. It names no person and no price.
 *
 * What could not be worked out is said in `notComputed` and again in the step, with what to read off the label instead. Never throws.
 *
 * @example startupPlan({ gear, conditions, report }).steps.map((step) => step.id) // ['before-you-start', 'place-stand', …]
 */
export function startupPlan(subject: StartupSubject): SetupPlan {
  const made = GROUPS.map((group) => group(subject))
  return {
    title: planTitle(subject),
    waterVolumeL: subject.report.figures.waterVolumeL ?? null,
    steps: made.flatMap((each) => each.steps),
    notComputed: made.flatMap((each) => each.notComputed),
    marks: readingMarks(subject),
  }
}

function planTitle({ gear, report }: StartupSubject): Phrase {
  const water = report.figures.waterVolumeL
  const size = gear.tank === null ? phrase`Tank` : phrase`${quantity(gear.tank.spec.lengthMm, 'mm', 0)} tank`
  return water === undefined ? size : phrase`${size}, ${litres(water)} of water`
}
