import type { ReactElement } from 'react'
import { addDays, sayDate, yearOf } from '../../../core/dates.ts'
import { MOST_AHEAD_DAYS } from '../../../core/pricing/outlook-view.ts'
import { sayByDate } from '../../../core/pricing/by-date.ts'
import { TierSign } from '../parts/signs.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import type { ExpectedBuild } from './use-by-dates.ts'

/** What each build is expected to come to by the day of the need, following the advice line by line. */
export function ByDateRow({ expected }: { expected: ReadonlyMap<string, ExpectedBuild> }): ReactElement {
  const { shown, chosen, state, inputs } = useDesk()
  const { byDate: until } = state.draft.need
  return (
    <tr>
      <th scope="row">
        <TierSign tier="byDate" /> {until === null ? 'By a date' : `By ${sayDate(until, yearOf(inputs.asOf))}`}
      </th>
      {shown.map((build) => (
        <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
          {build.cost.lines.length > 0 ? (
            <Figure expected={expected.get(build.id)} hasTotal={build.cost.today.complete} />
          ) : (
            <span className="quiet">nothing is bought</span>
          )}
        </td>
      ))}
    </tr>
  )
}

function Figure({ expected, hasTotal }: { expected: ExpectedBuild | undefined; hasTotal: boolean }): ReactElement {
  const { state, inputs, currency } = useDesk()
  const { byDate: until } = state.draft.need
  if (until === null) return <span className="quiet">the need says no day</span>
  if (until < inputs.asOf) return <span className="quiet">the day of the need is past</span>
  if (until > addDays(inputs.asOf, MOST_AHEAD_DAYS)) return <span className="quiet">more than a year ahead</span>
  if (expected?.byDate) {
    const { figure, range } = sayByDate(expected.byDate, currency, yearOf(inputs.asOf))
    return (
      <>
        {figure} <span className="note by-date-range">{range}</span>
      </>
    )
  }
  return <span className="quiet">{whyBlank(expected, hasTotal)}</span>
}

function whyBlank(expected: ExpectedBuild | undefined, hasTotal: boolean): string {
  if (!hasTotal) return 'no total today'
  if (expected?.failed) return 'the service could not be asked'
  return expected?.unknown ? 'not known yet: too little is recorded' : 'being worked out …'
}
