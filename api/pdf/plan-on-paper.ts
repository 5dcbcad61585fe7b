import { cautionTitle } from '../../core/startup/cautions.ts'
import type { Step, StepGroup } from '../../core/startup/setup-plan.ts'
import { phraseReaderFirst, readerFirst } from '../../core/startup/reader-first.ts'
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
  const told = new Map<string, number>()
  for (const step of build.plan.steps) {
    if (step.group !== last) groups.push({ name: GROUP_NAMES[step.group], steps: [] })
    last = step.group
    number += 1
    const first = step.caution !== null && !told.has(step.caution)
    const caution = readerFirst(cautionWords(step.caution, told), teller.units)
    if (step.caution !== null && first) told.set(step.caution, number)
    groups.at(-1)?.steps.push({ ...stepOnPaper(step, number, build, teller), caution, cautionFirst: first })
  }
  return { letter: build.letter, title: teller.phrase(build.plan.title), notComputed: build.plan.notComputed, groups, link, contact }
}

/** In full at the first step that calls for it, by name at each further one. */
function cautionWords(text: string | null, told: ReadonlyMap<string, number>): string {
  const first = told.get(text ?? '')
  const title = cautionTitle(text ?? '')
  return first === undefined || title === undefined ? (text ?? '') : `${title}, as in step ${first}.`
}

function stepOnPaper(step: Step, number: number, build: AssembledBuild, teller: Teller): Omit<StepPaper, 'caution' | 'cautionFirst'> {
  const loop = step.drawing === 'drip_loop' && build.report.figures.dripLoop !== undefined
  return {
    number,
    title: step.title,
    when: sayStepDay(step.earliestDay),
    why: teller.phrase(step.why),
    amounts: step.amounts.map(({ label, value }) => ({ label, value: teller.phrase(phraseReaderFirst(value, teller.units)) })),
    actions: step.actions.map(teller.phrase),
    howLong: step.howLong,
    stop: teller.phrase(step.stopAndAsk),
    done: step.done,
    drawing: loop ? 'loop' : step.drawing === 'level' ? 'level' : null,
    alt: loop
      ? 'Drawing: a cord leaves the tank, hangs down below the outlet and rises to it.'
      : step.drawing === 'level'
        ? 'Drawing: the spirit level lies along the front, the side and both diagonals of the stand.'
        : '',
  }
}
