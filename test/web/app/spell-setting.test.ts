import { expect, it } from 'vitest'
import type { InstallSettings } from '../../../core/install.ts'
import { spellSetting } from '../../../web/app/settings/spell-setting.ts'

const install: InstallSettings = {
  name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/New_York', units: { system: 'us', gallon: 'us', decimal: '.' }, contact: 'the club',
  paper: 'a4', energyPriceMinor: 17.34, circuitVoltageV: 120, circuitCurrentA: 15,
} // prettier-ignore

it('a setting that two people changed is told as its field shows it, never as it is stored', () => {
  expect(spellSetting(install, 'units')).toBe('in, gal, °F; US gallon; decimal point')
  expect(spellSetting({ ...install, units: { system: 'metric', gallon: 'imperial', decimal: ',' } }, 'units')).toBe(
    'cm, L, °C; imperial gallon; decimal comma',
  )
  expect(spellSetting({ ...install, mode: 'store' }, 'mode')).toBe('Store')
  expect(spellSetting(install, 'paper')).toBe('A4')
  expect(spellSetting(install, 'energyPriceMinor')).toBe('$0.1734')
  expect(spellSetting(install, 'leastSavingMinor')).toBe('$5.00')
  expect(spellSetting({ ...install, leastSavingMinor: 0 }, 'leastSavingMinor')).toBe('$0.00')
  expect([spellSetting(install, 'circuitVoltageV'), spellSetting(install, 'circuitCurrentA')]).toEqual(['120 V', '15 A'])
  for (const key of Object.keys(install) as Array<keyof InstallSettings>) expect(spellSetting(install, key)).not.toMatch(/[{}"]/)
})
