import type { ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { compareTotals, hasTotal, sayCheapest } from '../../../core/quote/compare-totals.ts'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import type { ExpectedBuild } from './use-by-dates.ts'

/** What each build costs more than the cheapest of today, and what of that is a sale. */
export function ComparedRow({ expected }: { expected: ReadonlyMap<string, ExpectedBuild> }): ReactElement | null {
  const { builds, shown, chosen, currency, inputs } = useDesk()
  const told = builds.map((build) => ({ ...build, byDate: expected.get(build.id)?.byDate ?? null }))
  const compared = compareTotals(told, { currency, thisYear: yearOf(inputs.asOf) })
  if (compared.length === 0) return null
  return (
    <tr className="compared">
      <th scope="row">Compared</th>
      {shown.map((build) => (
        <td key={build.id} className={columnClass(build.id === chosen.id)}>
          <span className="note">
            {compared.find((one) => one.letter === build.letter)?.words ?? (hasTotal(build) ? sayCheapest(build, builds) : '')}
          </span>
        </td>
      ))}
    </tr>
  )
}
