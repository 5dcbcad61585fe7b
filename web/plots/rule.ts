import type { Finding, Limit } from '../../core/sizing/finding.ts'
import { px, sign } from './frame.ts'
import { currentInk, paintFor, type Colour } from './palette.ts'

/** Where along the rule (0 to 1) a limit stands: most of the room is on the side that is allowed. */
const AT_MOST = 0.65
const AT_LEAST = 0.4
const BETWEEN = { low: 0.3, high: 0.7 }

/** A temperature has no useful zero: the rule then spans twenty kelvin about its limit, a heater's whole range. */
const DEGREES_SPAN = 20

interface RulePlaces {
  /** Stretches of the rule that are allowed, 0 to 1. */
  allowed: { from: number; to: number }
  limits: number[]
  place: (value: number) => number
}

/** How a limit lies on a rule of length 1. */
export function rulePlaces(limit: Limit): RulePlaces {
  const clamp = (share: number): number => Math.min(1, Math.max(0, share))
  if (limit.kind === 'between') {
    const perUnit = (BETWEEN.high - BETWEEN.low) / Math.max(limit.high.value - limit.low.value, Number.EPSILON)
    return {
      allowed: { from: BETWEEN.low, to: BETWEEN.high },
      limits: [BETWEEN.low, BETWEEN.high],
      place: (v) => clamp(BETWEEN.low + (v - limit.low.value) * perUnit),
    }
  }
  const bound = limit.kind === 'at_most' ? limit.high : limit.low
  const at = limit.kind === 'at_most' ? AT_MOST : AT_LEAST
  const perUnit = bound.unit === 'degC' || bound.value <= 0 ? 1 / DEGREES_SPAN : at / bound.value
  return {
    allowed: limit.kind === 'at_most' ? { from: 0, to: at } : { from: at, to: 1 },
    limits: [at],
    place: (v) => clamp(at + (v - bound.value) * perUnit),
  }
}

type Shown = Pick<Finding, 'value' | 'limit' | 'verdict'>
const COLOUR: Record<Finding['verdict'], Colour> = { fits: 'glass', marginal: 'marginal', does_not_fit: 'not-fit', not_known: 'ink' }

/**
 * A finding as a pointer on a rule with its limit: solid where allowed, dotted beyond. Value and limit stand beside it in words, so it is silent.
 * A value outside the rule's ends stands at the end with a second pointer behind it. Empty text where nothing can be drawn.
 */
export function ruleWithPointer(finding: Shown, options: { width?: number; height?: number; paper?: boolean } = {}): string {
  const { value, limit } = finding
  if (value === undefined || limit === undefined) return ''
  const width = options.width ?? 132
  const height = options.height ?? 22
  const paint = paintFor(options.paper)
  const ink = currentInk(options.paper, COLOUR[finding.verdict])
  const x = (share: number): number => 5 + share * (width - 10)
  const base = height - 6.5
  const places = rulePlaces(limit)
  const at = places.place(value.value)
  const pointer = (centre: number): string => `<path d="M${px(centre)} ${px(base - 2)}l-4.6-8h9.2z" fill="${ink}"/>`
  const beyond = at === 1 ? pointer(x(at) - 6) : at === 0 && value.value < 0 ? pointer(x(at) + 6) : ''
  return sign(
    { width, height, className: 'lvl' },
    `<path d="M4 ${px(base)}H${px(width - 4)}" stroke="${paint('edge')}" stroke-dasharray="1.5 2.5"/>` +
      `<path d="M${px(x(places.allowed.from))} ${px(base)}H${px(x(places.allowed.to))}" stroke="${paint('edge')}" stroke-width="3"/>` +
      places.limits
        .map((share) => `<path d="M${px(x(share))} ${px(base - 10.5)}v15" stroke="${paint('ink')}" stroke-width="1.5"/>`)
        .join('') +
      beyond +
      pointer(x(at)),
  )
}
