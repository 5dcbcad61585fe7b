import type { ReactElement, ReactNode } from 'react'
import { sayDate, type CivilDate } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import { DipSign, TierSign } from './signs.tsx'

/** The dip, and until when: "to Oct 31". Without a date it says `words`. */
export function SaleSign({
  until,
  thisYear,
  words = 'sale',
}: {
  until?: CivilDate | null
  thisYear?: number
  words?: string
}): ReactElement {
  return (
    <span className="sale">
      <DipSign />
      {until ? `to ${sayDate(until, thisYear)}` : words}
    </span>
  )
}

const TIER_NAMES = { full: 'Full price', today: 'Today', best: 'Best seen' } as const

/** One tier: mark, word, figure. Without a figure it says why, never a number with a hole in it. Use inside `<div className="tiers">`. */
export function TierRow({
  tier,
  minor,
  currency,
  small,
  why = 'not known',
}: {
  tier: keyof typeof TIER_NAMES
  minor: number | null
  currency: string
  small?: ReactNode
  why?: ReactNode
}): ReactElement {
  return (
    <div className={tier === 'today' ? 'now' : undefined}>
      <TierSign tier={tier} />
      <div>
        {TIER_NAMES[tier]}
        {small && <small>{small}</small>}
      </div>
      <div className="f">{minor === null ? <span className="quiet">{why}</span> : sayMoney(minor, currency)}</div>
    </div>
  )
}
