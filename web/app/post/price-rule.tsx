import type { ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import type { Standing } from '../../../core/pricing/standing.ts'
import { useCurrency } from '../session/session.ts'

/** Drawing units; the drawing is scaled to the width of the phone. */
const WIDTH = 358
const LEFT = 40
const RIGHT = 318

/** The price as a pointer on a rule, against the lowest and the regular price. Nothing where there is nothing to hold it against. */
export function PriceRule({
  priceMinor,
  standing,
  currency,
}: {
  priceMinor: number
  standing: Standing
  currency: string
}): ReactElement | null {
  const home = useCurrency()
  const { marks } = standing
  if (marks.length === 0) return null
  const figures = [priceMinor, ...marks.map((mark) => mark.priceMinor)]
  const low = Math.min(...figures)
  const high = Math.max(...figures)
  const span = Math.max(high - low, 1)
  const at = (minor: number): number => (high === low ? (LEFT + RIGHT) / 2 : LEFT + ((minor - low) / span) * (RIGHT - LEFT))
  const say = (minor: number): string => sayMoney(minor, currency, { home })
  const bare = (minor: number): string => sayMoney(minor, currency, { symbol: false })
  const distinct = marks.filter((mark, index) => marks.findIndex((other) => other.priceMinor === mark.priceMinor) === index)
  const close = distinct.length === 2 && Math.abs(at(distinct[0]?.priceMinor ?? 0) - at(distinct[1]?.priceMinor ?? 0)) < 110
  const me = at(priceMinor)
  const said = marks.map(({ label, priceMinor: minor }) => `${label === 'lowest' ? 'lowest' : 'shelf price here'} ${say(minor)}`).join(', ')
  return (
    <svg
      className="range"
      viewBox={`0 0 ${WIDTH} ${close ? 78 : 62}`}
      role="img"
      aria-label={`${say(priceMinor)} against the record: ${said}`}
    >
      <path d={`M${LEFT} 30H${RIGHT}`} className="range-line" />
      {distinct.map(({ label, priceMinor: minor }, index) => {
        const x = at(minor)
        const anchor = x > WIDTH * 0.66 ? 'end' : x < WIDTH * 0.33 ? 'start' : 'middle'
        return (
          <g key={label}>
            <path d={`M${x} 22v16`} className="range-mark" />
            <text x={anchor === 'start' ? x - 8 : anchor === 'end' ? x + 8 : x} y={close && index === 1 ? 70 : 53} textAnchor={anchor}>
              {bare(minor)}{' '}
              {marks
                .filter((mark) => mark.priceMinor === minor)
                .map((mark) => (mark.label === 'lowest' ? 'lowest' : 'shelf'))
                .join(', ')}
            </text>
          </g>
        )
      })}
      <path d={`M${me} 27l-6-11h12z`} className="me" />
      <text x={me > WIDTH * 0.7 ? me - 10 : me + 10} y="16" textAnchor={me > WIDTH * 0.7 ? 'end' : 'start'} className="me">
        {say(priceMinor)}
      </text>
    </svg>
  )
}
