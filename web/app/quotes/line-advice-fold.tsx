import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import { yearOf } from '../../../core/dates.ts'
import { sayAct, sayReturns, type LineAdvice } from '../../../core/pricing/line-advice.ts'
import { holdsWater } from '../../../core/quote/advice-table.ts'
import { useDesk } from './desk-context.ts'

interface Props {
  advice: LineAdvice
  /** So many are bought of it: the tag tells the price of one. */
  quantity: number
  productId: string
  /** Where the line is bought. */
  storeId: string | null
  kind: Kind | null
  /** What is bought, for whoever hears the fold without its cell. */
  text: string
}

/** What to do about one line, in its cell: the act and its price; why, on opening. */
export function LineAdviceFold({ advice, quantity, productId, storeId, kind, text }: Props): ReactElement {
  const { currency, inputs } = useDesk()
  const { act, price, day } = sayAct(advice, currency, yearOf(inputs.asOf))
  const { byDate, weekWaitMinor } = inputs.draft.need
  const asked = { store: storeId ?? undefined, until: byDate ?? undefined, wait: weekWaitMinor ?? undefined }
  const returns = sayReturns(advice, holdsWater({ kind }))
  const said =
    advice.advice === 'wait' && price !== ''
      ? `${act}: ${price} on the tag${quantity > 1 ? ' of one' : ''}`
      : advice.advice === 'no_hurry'
        ? `${act} ${day}`
        : act
  return (
    <details className="line-advice" data-wait={advice.advice === 'wait' || undefined}>
      <summary>
        {said}
        <span className="sr">, {text}</span>
      </summary>
      <p>
        {advice.words} {advice.elsewhere} {returns}{' '}
        <Link to="/prices/$productId" params={{ productId }} search={asked} hash="outlook-head">
          What to expect
        </Link>
      </p>
    </details>
  )
}
