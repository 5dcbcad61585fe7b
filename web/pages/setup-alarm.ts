import { addDays, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { leakHoldShortDays, newestFigures } from '../../core/startup/reading-log.ts'
import { GENERAL_MARKS, readingWarnings } from '../../core/startup/reading-marks.ts'
import { sayPhrase } from '../../core/units/say.ts'
import { contactLine } from './contact.ts'
import { markup, type Markup } from './markup.ts'
import type { SetupPageProps } from './setup-page.ts'
import { stopSign } from './signs.ts'

/** Where the newest readings pass a mark of the plan: stop, what was read, what to do now, whom to ask. Empty where none does. */
export function readingAlarm(props: SetupPageProps): Markup | '' {
  const { plan, readings, ticks, units } = props
  const fishIn = ticks.some((tick) => tick.stepId === 'first-fish')
  const newest = newestFigures(readings)
  const warn = (figures: Parameters<typeof readingWarnings>[0]) => readingWarnings(figures, plan.marks ?? GENERAL_MARKS, fishIn)
  const standing = warn(newest)
  // What was just written down is told even where a test of a later day stands.
  const written = readings.find(({ id }) => id === props.written)
  const own = written === undefined ? [] : warn(written).filter(({ mark }) => !standing.some((each) => each.mark === mark))
  const warnings = [...standing, ...own]
  if (warnings.length === 0 || newest.takenOn === null) return ''
  const cautions = [...new Set(warnings.flatMap(({ caution }) => caution ?? []))]
  return markup`<div class="told stop alarm" role="alert"><p class="told-head">${stopSign()}Stop and ask: a reading is past its mark</p>
<ul class="plain">${warnings.map(({ found, todo }) => markup`<li><b>${sayPhrase(found, units)}</b> ${sayPhrase(todo, units)}</li>`)}</ul>
${cautions.map((caution) => markup`<p>${caution}</p>`)}<p class="note">By ${own.length > 0 && written !== undefined ? `the test just written down, of ${sayDate(written.takenOn, yearOf(props.today))}, and ` : ''}the newest readings in the log, last written for ${sayDate(newest.takenOn, yearOf(props.today))}. Was one misread? Take it out below and test again.</p>
<p class="ask">${contactLine(props.contact)}</p></div>`
}

/** A hold that was ticked too soon, in one line; it blocks nothing. Empty where it was long enough. */
export function shortHold({ plan, ticks, today }: SetupPageProps): Markup | '' {
  const short = leakHoldShortDays(plan, ticks)
  const hold = ticks.find((tick) => tick.stepId === 'leak-hold')
  const held = hold?.on
  if (short === 0 || held === undefined || hold?.onWord === true) return ''
  return markup`<p class="caution">The leak hold was ticked too soon: a slow leak shows only with time. ${holdNow(addDays(held, short), ticks, today)} If it did stand full that long, take it back under Done and tick it with that word.</p>`
}

function holdNow(until: CivilDate, ticks: SetupPageProps['ticks'], today: CivilDate): string {
  if (ticks.some((tick) => tick.stepId === 'drain')) return 'Fill the tank and hold it again before anything goes into it.'
  const now =
    until > today ? `Leave the tank full until ${sayDate(until, yearOf(today))}` : 'Look at the water line and the paper once more'
  return `${now}, or fill it and hold it again.`
}
