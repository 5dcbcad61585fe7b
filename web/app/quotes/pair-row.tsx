import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { comparePair, type PairTier } from '../../../core/quote/compare-pair.ts'
import { hasTotal } from '../../../core/quote/compare-totals.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TierSign } from '../parts/signs.tsx'
import { useDesk } from './desk-context.ts'
import { usualPair } from './usual-pair.ts'
import type { ExpectedBuild } from './use-by-dates.ts'

/** Two builds of the advisor's choice, tier by tier. Of two builds the row above says it all. */
export function PairRow({ expected }: { expected: ReadonlyMap<string, ExpectedBuild> }): ReactElement | null {
  const { builds, shown, currency, inputs } = useDesk()
  const [picked, pick] = useState<readonly [string, string] | null>(null)
  const priced = builds.filter(hasTotal)
  if (priced.length < 3) return null
  const [one, other] = pairOf(priced, picked)
  const withDate = (build: WorkedBuild) => ({ ...build, byDate: expected.get(build.id)?.byDate ?? null })
  const { tiers, words } = comparePair(withDate(one), withDate(other), {
    currency,
    thisYear: yearOf(inputs.asOf),
    mode: inputs.install.mode,
  })
  const options = priced.map(({ id, letter, name }) => ({ value: id, label: `${letter}: ${name}` }))
  // The one that is chosen twice changes places with the other.
  const choose = (at: 0 | 1) => (id: string) => {
    if (id === '') return
    const rest = at === 0 ? other.id : one.id
    const instead = at === 0 ? one.id : other.id
    const second = rest === id ? instead : rest
    pick(at === 0 ? [id, second] : [second, id])
  }
  return (
    <tr className="pair">
      <th scope="row">Any two</th>
      <td colSpan={shown.length}>
        <div className="pair-picks">
          <SelectField label="Compare" value={one.id} options={options} onChange={choose(0)} />
          <SelectField label="with" value={other.id} options={options} onChange={choose(1)} />
        </div>
        <div className="pair-told" aria-live="polite">
          <dl className="pair-tiers">
            {tiers.map((tier) => (
              <PairFigure key={tier.tier} {...tier} />
            ))}
          </dl>
          <p className="note">{words}</p>
        </div>
      </td>
    </tr>
  )
}

/** What was picked, as long as both are there. */
function pairOf(priced: readonly WorkedBuild[], picked: readonly [string, string] | null): readonly [WorkedBuild, WorkedBuild] {
  const [one, other] = (picked ?? []).map((id) => priced.find((build) => build.id === id))
  return one && other ? [one, other] : usualPair(priced)
}

const PairFigure = ({ tier, label, words }: PairTier): ReactElement => (
  <div>
    <dt>
      <TierSign tier={tier === 'bestSeen' ? 'best' : tier} /> {label}
    </dt>
    <dd>{words}</dd>
  </div>
)
