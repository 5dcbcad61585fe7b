import { expect, it, vi } from 'vitest'
import * as utilisation from '../../core/sizing/light-utilisation.ts'
import { one, reportOf } from '../core/sizing/sample-build.ts'

vi.mock('../../core/sizing/light-utilisation.ts', { spy: true })

/** Calls that a report makes, and its verdicts on the light. */
function effortOf(count: number, quantity: number) {
  const calls = vi.mocked(utilisation.lightUtilisation).mock.calls
  calls.length = 0
  const lights = Array.from({ length: count }, () => one('Halden', { lengthMm: 1150, widthMm: 80, photonFluxUmolS: 40 }, quantity))
  const findings = reportOf({ lights }).findings.filter(({ check }) => check === 'light_level')
  return { calls: calls.length, findings }
}

it('lights that are alike cost no more than one of them, and give what one entry of all of them gives', () => {
  const apart = effortOf(12, 1)
  expect(apart.calls).toBe(effortOf(1, 1).calls)
  expect(apart.calls).toBeGreaterThan(0)
  expect(apart.findings).toEqual(effortOf(1, 12).findings)
})
