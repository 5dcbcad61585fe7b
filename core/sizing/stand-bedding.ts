import { phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding, type FindingParts } from './make-finding.ts'
import type { Situation } from './situation.ts'

const MAT = { slot: 'bed_glass', quantity: 1 } as const

/**
 * Whether what lies under the tank suits its bottom: a mat under flat glass, none under a frame. A mat smaller than the tank leaves edges hollow.
 * Without a stated style it is not known, for the two want opposite things.
 *
 * @example standBedding(situation)?.verdict // 'fits': a rimmed tank on its own frame, without a mat
 */
export function standBedding(situation: Situation): Finding | null {
  const { gear, tank } = situation
  if (!gear.stand && !gear.mat) return null
  const make = (verdict: Finding['verdict'], reason: Finding['reason'], more: Partial<FindingParts> = {}) =>
    makeFinding('stand_bedding', { verdict, reason, caution: 'load', ...more })
  if (tank.style === undefined) {
    return make(
      'not_known',
      phrase`Nobody has stated whether the tank has a frame under it. Flat glass wants a mat, a framed tank wants none.`,
      {
        action: { text: phrase`Enter the tank's style.` },
        missing: ['style of the tank: rimmed or rimless'],
      },
    )
  }
  if (tank.style === 'rimmed') return rimmed(situation, make)
  if (gear.stand?.spec.top === 'perimeter')
    return make(
      'does_not_fit',
      phrase`The stand is an open frame and the tank's bottom is flat glass: it needs a full board under all of it.`,
      {
        action: {
          text: phrase`Choose a stand with a full top, and a mat.`,
          want: { slot: 'carry_tank', quantity: 1, minimum: {}, top: 'full' },
        },
      },
    )
  const minimum = { lengthMm: Math.ceil(tank.lengthMm - MAT_SLACK_MM), widthMm: Math.ceil(tank.widthMm - MAT_SLACK_MM) }
  const action = { text: phrase`Add a closed-cell mat as large as the tank.`, want: { ...MAT, minimum } }
  if (!gear.mat)
    return make('does_not_fit', phrase`The tank's bottom is flat glass: a grain of sand under it is enough to crack it. It wants a mat.`, {
      action,
    })
  const { lengthMm, widthMm } = gear.mat.spec
  if (lengthMm === undefined || widthMm === undefined)
    return make('not_known', phrase`The size of the mat is not stated.`, {
      action: { text: phrase`Enter the mat's length and depth.` },
      missing: ['size of the mat'],
    })
  if (lengthMm < tank.lengthMm - MAT_SLACK_MM || widthMm < tank.widthMm - MAT_SLACK_MM)
    return make('does_not_fit', phrase`The mat is smaller than the tank: its edges, which carry the most, would lie hollow.`, { action })
  return make(
    'fits',
    tank.shape === undefined || tank.shape === 'rectangular'
      ? phrase`Flat glass on a full mat.`
      : phrase`Flat glass on a full mat, cut to the tank's plan or left standing out.`,
  )
}

/** Mats are cut a little small so as not to show; the panes above them are thicker than this. Common practice. */
const MAT_SLACK_MM = 6

function rimmed(
  situation: Situation,
  make: (verdict: Finding['verdict'], reason: Finding['reason'], more?: Partial<FindingParts>) => Finding,
): Finding {
  if (!situation.gear.mat) return make('fits', phrase`The tank stands on its own frame: no mat.`)
  return make('marginal', phrase`The tank stands on its own frame; a mat under it may press on the floating bottom.`, {
    action: { text: phrase`Leave the mat out, unless the maker asks for one.` },
  })
}
