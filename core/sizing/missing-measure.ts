import type { TankSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { plansOf } from './tank-forms.ts'

/** What a shape asks for besides the box around it, by its name and how it is measured. Every other shape is its box. */
const MEASURES = {
  bow_front: { key: 'bowMm', name: 'The bow', means: 'how far the middle of the front stands out before its ends' },
  corner_cut: { key: 'endMm', name: 'The depth of the ends', means: 'the short panes on either back' },
} as const
export type ShapeMeasure = (typeof MEASURES)[keyof typeof MEASURES]['key']

/** Measures that a tank has by its shape alone. @example measureOfShape('bow_front') // 'bowMm' */
export const measureOfShape = (shape: string | undefined): ShapeMeasure | null =>
  shape === 'bow_front' || shape === 'corner_cut' ? MEASURES[shape].key : null

/**
 * The measure that a tank's shape needs and nobody stated, and what follows from that; null where nothing is missing.
 *
 * Units:  mm, of the box around the tank.
 * Range:  any spec that the validator accepts.
 * Source: the ends are those of `plansOf`: typical ranges, common practice.
 *
 * @example missingMeasure({ lengthMm: 900, widthMm: 400, shape: 'bow_front' })?.key // 'bowMm', "… from 45 mm to 180 mm …"
 */
export function missingMeasure(
  tank: Pick<TankSpec, 'lengthMm' | 'widthMm' | 'shape' | 'bowMm' | 'endMm'>,
): { key: ShapeMeasure; text: Phrase } | null {
  const { shape } = tank
  if ((shape !== 'bow_front' && shape !== 'corner_cut') || tank[MEASURES[shape].key] !== undefined) return null
  const { key, name, means } = MEASURES[shape]
  const ends = plansOf(tank).plans.map((plan) => plan[key] ?? 0)
  const [low, high] = [quantity(Math.min(...ends), 'mm', 0), quantity(Math.max(...ends), 'mm', 0)]
  return {
    key,
    text: phrase`${name} is not stated: ${means}. Until it is measured, water, weight and heat are reckoned from ${low} to ${high}, and a verdict that turns in between stays not known.`,
  }
}
