import { Fragment, type ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import type { Tier } from '../../../core/pricing/tiers.ts'
import { heldDiscounts, sayHeldHere } from '../../../core/quote/discount-room.ts'
import { discountOf } from '../../../core/quote/quote-market.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { sayCounts } from '../../../core/sizing/count-words.ts'
import { staffBuildOf, staffOfBuild, staffScale } from '../../plots/staff.ts'
import { TierSign } from '../parts/signs.tsx'
import { Svg } from '../parts/svg.tsx'
import { Verdict } from '../parts/verdict.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import { ByDateRow } from './by-date-row.tsx'
import { ComparedRow } from './compared-row.tsx'
import { KitRow } from './kit-row.tsx'
import { PairRow } from './pair-row.tsx'
import { sayBudget, sayMissing } from './tier-words.ts'
import type { ExpectedBuild } from './use-by-dates.ts'

const TIERS = [
  { key: 'full', sign: 'full', words: 'Full price' },
  { key: 'today', sign: 'today', words: 'Today' },
  { key: 'bestSeen', sign: 'best', words: 'Best seen' },
] as const

/** What each build costs in the order of water levels, on one staff, and how many checks came out how. */
export function TierRows({ expected }: { expected: ReadonlyMap<string, ExpectedBuild> }): ReactElement {
  const { shown, chosen, state } = useDesk()
  // A store's own quote knows of no price elsewhere.
  const tiers = TIERS.filter(({ key }) => key !== 'bestSeen' || state.view.install.mode === 'club')
  return (
    <tbody className="tiers-b">
      {tiers.map(({ key, sign, words }) => (
        <Fragment key={key}>
          {key === 'bestSeen' && <ByDateRow expected={expected} />}
          <tr className={key === 'today' ? 'now' : undefined}>
            <th scope="row">
              <TierSign tier={sign} /> {words}
            </th>
            {shown.map((build) => (
              <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
                <TierFigure tier={build.cost[key]} build={build} />
                {key === 'today' && <HeldNote build={build} />}
              </td>
            ))}
          </tr>
        </Fragment>
      ))}
      <StaffRow expected={expected} />
      <ComparedRow expected={expected} />
      <KitRow />
      <CountRow />
      <PairRow expected={expected} />
    </tbody>
  )
}

/** A figure, or which line stands in its way with the press that opens it. Never a total with a hole in it. */
function TierFigure({ tier, build }: { tier: Tier; build: WorkedBuild }): ReactElement {
  const { currency, open, choose, locked } = useDesk()
  if (tier.complete)
    return build.cost.lines.length === 0 ? <span className="quiet">no goods yet</span> : <>{sayMoney(tier.totalMinor, currency)}</>
  const row = build.rows.find((one) => one.lineId === tier.missing[0]?.lineId)
  return (
    <span className="no-total">
      <Verdict verdict="not_known" words={sayMissing(tier.missing)} />
      {row && !locked && (
        <button
          type="button"
          className="link"
          onClick={() => {
            choose(build.id)
            open({ at: 'cell', buildId: build.id, slot: row.slot, want: null })
          }}
        >
          Open the line
        </button>
      )}
    </span>
  )
}

/** That the discount comes to less here than it says, beside the total that it is in. */
function HeldNote({ build }: { build: WorkedBuild }): ReactElement | null {
  const { inputs, currency } = useDesk()
  const [held] = heldDiscounts(discountOf(inputs), [build])
  if (!held) return null
  return <span className="note held-note">{sayHeldHere(held, currency)}</span>
}

function StaffRow({ expected }: { expected: ReadonlyMap<string, ExpectedBuild> }): ReactElement | null {
  const { builds, shown, chosen, currency, state } = useDesk()
  const { budgetMinor } = state.draft.need
  const priced = builds.map((build) => ({ build, staff: staffBuildOf({ ...build, byDate: expected.get(build.id)?.byDate ?? null }) }))
  const scale = staffScale(
    priced.filter(({ build }) => build.cost.lines.length > 0).map(({ staff }) => staff),
    budgetMinor,
  )
  if (!scale) return null
  const whole = (minor: number) => sayMoney(minor, currency).replace(/\.0+$/, '')
  return (
    <tr className="scale">
      <th scope="row">
        <span className="note">
          {whole(scale.lowMinor)} to {whole(scale.highMinor)}
        </span>
        {budgetMinor !== null && <span className="note">dashes: budget</span>}
      </th>
      {priced
        .filter(({ build }) => shown.includes(build))
        .map(({ build, staff }) => {
          const total = build.cost.today.complete && build.cost.lines.length > 0 ? build.cost.today.totalMinor : null
          const budget = budgetMinor !== null && total !== null ? sayBudget(total, budgetMinor, currency) : null
          return (
            <td key={build.id} className={columnClass(build.id === chosen.id)}>
              {total !== null && (
                <Svg
                  markup={staffOfBuild(staff, scale, { id: `desk-staff-${build.letter}`, budgetMinor, currency })}
                  className="staff-box"
                />
              )}
              {budget && <span className="note">{budget.over ? <b>{budget.words}</b> : budget.words}</span>}
            </td>
          )
        })}
    </tr>
  )
}

function CountRow(): ReactElement {
  const { shown, chosen, choose } = useDesk()
  return (
    <tr className="cnt">
      <th scope="row">Sizing</th>
      {shown.map((build) => (
        <td key={build.id} className={columnClass(build.id === chosen.id)}>
          <ul className="counts">
            {build.drawing === null ? (
              <li className="note">no tank to check yet</li>
            ) : (
              sayCounts(build.report).map(({ verdict, words }) => (
                <li key={words}>
                  <Verdict verdict={verdict} words={words} />
                </li>
              ))
            )}
          </ul>
          <a className="see-report" href="#sizing" onClick={() => choose(build.id)}>
            See why<span className="sr">: sizing report for {build.letter}</span>
          </a>
        </td>
      ))}
    </tr>
  )
}
