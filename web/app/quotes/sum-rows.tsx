import type { ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import { openSlots, sayLeftOut, sayOpenSlots } from '../../../core/quote/open-slots.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { sumPartOf, sumRowsOf } from '../../../core/quote/sum-parts.ts'
import { Button } from '../parts/button.tsx'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'
import { FillButton } from './fill-button.tsx'
import { OwnedButton } from './owned-button.tsx'
import { useCustomerGear } from './use-customer-gear.ts'

/** Goods, delivery, tax and what they come to today: a column that adds up, and what it is still short of. */
export function SumRows(): ReactElement {
  const { shown, chosen, currency } = useDesk()
  const todayOf = ({ cost }: WorkedBuild) => (cost.today.complete && cost.lines.length > 0 ? cost.today : null)
  return (
    <tfoot>
      {sumRowsOf(shown).map(({ part, words }) => (
        <tr key={part}>
          <th scope="row">{words}</th>
          {shown.map((build) => {
            const today = todayOf(build)
            return (
              <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
                {today && sayMoney(sumPartOf(today, part), currency, { symbol: false })}
              </td>
            )
          })}
        </tr>
      ))}
      <tr className="sum">
        <th scope="row">Today</th>
        {shown.map((build) => {
          const today = todayOf(build)
          return (
            <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
              {today ? sayMoney(today.totalMinor, currency) : <span className="quiet">no total</span>}
            </td>
          )
        })}
      </tr>
      <DepositRow />
      <OpenRow />
    </tfoot>
  )
}

/** What is paid when the customer says yes, under the total it is taken of. */
function DepositRow(): ReactElement | null {
  const { shown, chosen, currency } = useDesk()
  if (shown.every(({ depositMinor }) => depositMinor == null)) return null
  return (
    <tr>
      <th scope="row">Deposit</th>
      {shown.map(({ id, depositMinor }) => (
        <td key={id} className={columnClass(id === chosen.id, 'fig')}>
          {depositMinor == null ? '' : sayMoney(depositMinor, currency, { symbol: false })}
        </td>
      ))}
    </tr>
  )
}

/** What a total does not hold, beside it: nobody should take it for the whole. What is open is filled from here. */
function OpenRow(): ReactElement | null {
  const { shown, chosen, open, locked } = useDesk()
  const { gear } = useCustomerGear()
  if (gear.length === 0 && shown.every((build) => build.drawing === null && openSlots(build).length === 0)) return null
  return (
    <tr className="open-slots">
      <th scope="row">Not in it</th>
      {shown.map((build) => (
        <td key={build.id} className={columnClass(build.id === chosen.id)}>
          <span className="note">{build.drawing === null ? sayOpenSlots(build) : sayLeftOut(build)}</span>
          <OwnedButton build={build} />
          {build.drawing !== null && <FillButton build={build} />}
          {!locked && (
            <Button
              small
              look="plain"
              {...(build.id === chosen.id ? { 'aria-keyshortcuts': 'V' } : {})}
              onClick={() => open({ at: 'cell', buildId: build.id, slot: 'services', want: null })}
            >
              Add a service<span className="sr"> to build {build.letter}</span>
            </Button>
          )}
        </td>
      ))}
    </tr>
  )
}
