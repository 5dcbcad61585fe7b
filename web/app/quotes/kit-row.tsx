import { Link } from '@tanstack/react-router'
import { useDeferredValue, useMemo, type ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import { kitsApart, kitSumRows, sayKitApart, type KitApart } from '../../../core/quote/kit-apart.ts'
import { columnClass } from './column-class.ts'
import { useDesk } from './desk-context.ts'

/** Each kit against the parts that it replaces in its build. Told a moment after an edit. */
export function KitRow(): ReactElement | null {
  const { shown, chosen, currency, inputs } = useDesk()
  // A keystroke is shown first, this after it.
  const settled = useDeferredValue(inputs)
  const told = useMemo(() => settled.draft.builds.map(({ id }, index) => ({ id, kits: kitsApart(settled, index) })), [settled])
  const kitsOf = (buildId: string): KitApart[] => told.find(({ id }) => id === buildId)?.kits ?? []
  if (shown.every(({ id }) => kitsOf(id).length === 0)) return null
  return (
    <tr className="compared">
      <th scope="row">Kit</th>
      {shown.map(({ id }) => (
        <td key={id} className={columnClass(id === chosen.id)}>
          <span className="note">
            {kitsOf(id)
              .map((kit) => sayKitApart(kit, currency))
              .join(' ')}
          </span>
          {kitsOf(id).map((kit, index) => (
            <Parts key={index} kit={kit} />
          ))}
        </td>
      ))}
    </tr>
  )
}

/** What the kit is held against, part by part: a price opens what it rests on, as in a slot. */
function Parts({ kit }: { kit: KitApart }): ReactElement | null {
  const { currency, inputs } = useDesk()
  const { name, parts } = kit
  if (parts.length === 0) return null
  const listed = inputs.install.mode === 'store'
  return (
    <details className="parts-apart">
      <summary>
        Its parts bought apart<span className="sr">, {name}</span>
      </summary>
      <ul>
        {parts.map((part, index) => (
          <li key={index}>
            <span>{part.quantity > 1 ? `${part.quantity} × ${part.name}` : part.name}</span>
            <Link
              to={listed ? '/catalog/price-list/$productId' : '/prices/$productId'}
              params={{ productId: part.productId }}
              className={part.todayMinor === null ? 'price none' : 'price'}
            >
              {part.todayMinor === null ? 'no price' : sayMoney(part.todayMinor, currency, { symbol: false })}
              <span className="sr">
                , {listed ? 'our list’s' : 'sightings of'} {part.name}
              </span>
            </Link>
          </li>
        ))}
        {kitSumRows(kit).map(({ words, minor }) => (
          <li key={words} className="sum">
            <span>{words}</span>
            <span className="price">{sayMoney(minor, currency, { symbol: false })}</span>
          </li>
        ))}
      </ul>
    </details>
  )
}
