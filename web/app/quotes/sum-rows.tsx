import type { ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import type { AssembledBuild } from '../../../core/quote/revision.ts'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'

const PARTS = [
  { key: 'goodsMinor', words: 'Goods' },
  { key: 'deliveryMinor', words: 'Delivery' },
  { key: 'taxMinor', words: 'Tax' },
] as const

/** Goods, delivery, tax and what they come to today. */
export function SumRows(): ReactElement {
  const { shown, chosen, currency } = useDesk()
  const figure = (build: AssembledBuild, key: 'goodsMinor' | 'deliveryMinor' | 'taxMinor' | 'totalMinor', symbol: boolean): string => {
    const { today, lines } = build.cost
    return today.complete && lines.length > 0 ? sayMoney(today[key], currency, { symbol }) : ''
  }
  return (
    <tfoot>
      {PARTS.map(({ key, words }) => (
        <tr key={key}>
          <th scope="row">{key === 'taxMinor' ? sayTax(shown) : words}</th>
          {shown.map((build) => (
            <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
              {figure(build, key, false)}
            </td>
          ))}
        </tr>
      ))}
      <tr className="sum">
        <th scope="row">Today</th>
        {shown.map((build) => (
          <td key={build.id} className={columnClass(build.id === chosen.id, 'fig')}>
            {figure(build, 'totalMinor', true) || <span className="quiet">no total</span>}
          </td>
        ))}
      </tr>
    </tfoot>
  )
}

/** "Tax, 6 %" where every receipt has one rate; else the word alone, since each store has its own. */
function sayTax(builds: AssembledBuild[]): string {
  const rates = new Set(builds.flatMap((build) => build.cost.receipts.map((receipt) => receipt.taxBasisPoints)))
  const [rate] = rates
  return rates.size === 1 && rate !== undefined ? `Tax, ${rate / 100} %` : 'Tax'
}
