import { describe, expect, it } from 'vitest'
import { InstallInput } from '../../../core/install/schema.ts'

const install = {
  name: 'Tarnwick Aquarium Club',
  mode: 'club',
  currency: 'USD',
  country: 'US',
  timeZone: 'America/New_York',
  units: { system: 'us', gallon: 'us', decimal: '.' },
  contact: '',
  paper: 'letter',
  energyPriceMinor: 17.5,
  circuitVoltageV: 120,
  circuitCurrentA: 15,
}

describe('the settings of an install', () => {
  it('are taken, a fraction of a cent for the kilowatt hour included', () => {
    expect(InstallInput.parse(install)).toEqual(install)
  })

  it.each([
    [{ currency: 'dollars' }, 'Currency is three capital letters of ISO 4217, like USD or EUR.'],
    [{ timeZone: 'EDT5' }, 'Time zone is not known. Write it like Europe/Berlin or America/New_York.'],
    [{ circuitVoltageV: 12 }, 'Circuit voltage is between 90 and 260 V.'],
    [{ circuitCurrentA: Number.POSITIVE_INFINITY }, 'Circuit current is between 1 and 63 A.'],
    [{ paper: 'a5' }, 'Paper is one of: a4, letter.'],
  ])('%o are refused in words', (changed, message) => {
    expect(InstallInput.safeParse({ ...install, ...changed }).error?.issues.map((issue) => issue.message)).toEqual([message])
  })
})
