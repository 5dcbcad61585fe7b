import type { Step, StepGroup } from '../../core/startup/setup-plan.ts'
import { sayStepDay } from '../../core/startup/step-day.ts'
import type { AssembledBuild } from '../../core/quote/revision.ts'
import type { LinkPaper, PlanPaper, StepPaper } from './paper.ts'
import type { Teller } from './teller.ts'

const GROUP_NAMES: Record<StepGroup, string> = {
  before: 'Before you start',
  place: 'Place and level',
  leak_test: 'Leak test',
  fit_out: 'Fit out',
  power: 'Cords and power',
  fill: 'Fill and run in',
  cycle: 'Cycle, before any fish',
  first_fish: 'First fish',
}

/** The startup checklist of one build, its steps numbered through. */
export function planOnPaper(build: AssembledBuild, contact: string, link: LinkPaper | null, teller: Teller): PlanPaper {
  const groups: PlanPaper['groups'] = []
  let number = 0
  let last: StepGroup | null = null
  for (const step of build.plan.steps) {
    if (step.group !== last) groups.push({ name: GROUP_NAMES[step.group], steps: [] })
    last = step.group
    number += 1
    groups.at(-1)?.steps.push(stepOnPaper(step, number, build, teller))
  }
  return { letter: build.letter, title: teller.phrase(build.plan.title), notComputed: build.plan.notComputed, groups, link, contact }
}

function stepOnPaper(step: Step, number: number, build: AssembledBuild, teller: Teller): StepPaper {
  const loop = step.drawing === 'drip_loop' && build.report.figures.dripLoop !== undefined
  return {
    number,
    title: step.title,
    when: sayStepDay(step.earliestDay),
    why: teller.phrase(step.why),
    amounts: step.amounts.map(({ label, value }) => ({ label, value: teller.phrase(value) })),
    actions: step.actions.map(teller.phrase),
    howLong: step.howLong,
    stop: teller.phrase(step.stopAndAsk),
    done: step.done,
    caution: step.caution ?? '',
    drawing: loop ? 'loop' : step.drawing === 'level' ? 'level' : null,
    alt: loop
      ? 'Drawing: a cord leaves the tank, hangs down below the outlet and rises to it.'
      : step.drawing === 'level'
        ? 'Drawing: the spirit level lies along the front, the side and both diagonals of the stand.'
        : '',
  }
}
