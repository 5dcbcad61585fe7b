import { appliancesPowerW, unstatedAppliances } from './appliances.ts'
import { filterPowerW, heaterPowerW, lightPowerW, unstatedPower } from './heating.ts'
import type { SizingSubject } from './report.ts'
import { footprintM2 } from './tank-forms.ts'
import { type Span, sumOf, times } from './span.ts'

/** Outside volume and length taken for a build without a tank: only where a power is not stated do they count. Common practice: a middling tank. */
const NO_TANK = { lengthMm: 900, volumeL: 150 }

/** Everything on at once, W: heaters, pumps, lamps and all else of the build that is plugged in. The room's other load is apart. */
export function applianceLoadW(subject: SizingSubject): { loadW: Span; unstated: string[] } {
  const { gear } = subject
  const tank = gear.tank?.spec
  const volumeL = tank ? footprintM2(tank).high * tank.heightMm : NO_TANK.volumeL
  const heaters = gear.heaters.map(({ spec, quantity }) => times(heaterPowerW(spec.powerW, volumeL), quantity))
  return {
    loadW: sumOf([...heaters, filterPowerW(subject), lightPowerW(subject, tank?.lengthMm ?? NO_TANK.lengthMm), appliancesPowerW(gear)]),
    unstated: [...unstatedPower(gear, ['heaters', 'filters', 'lights']), ...unstatedAppliances(gear)],
  }
}
