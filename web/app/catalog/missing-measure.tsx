import type { ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Spec, TankSpec } from '../../../core/catalog/spec.ts'
import { missingMeasure } from '../../../core/sizing/missing-measure.ts'
import { sayPhrase } from '../../../core/units/say.ts'
import { useReader } from '../session/session.ts'
import './catalog.css'

/** What a tank's shape needs and nobody entered, with what follows; nothing for another kind, or while its sides are not there. */
export function MissingMeasure({ kind, spec }: { kind: Kind; spec: Spec }): ReactElement {
  const reader = useReader()
  const { lengthMm, widthMm, ...tank } = spec as Partial<TankSpec>
  const missing = kind === 'tank' && lengthMm && widthMm ? missingMeasure({ lengthMm, widthMm, ...tank }) : null
  return <output className="missing-measure">{missing && sayPhrase(missing.text, reader)}</output>
}
