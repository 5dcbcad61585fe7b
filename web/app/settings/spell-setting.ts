import { LEAST_SAVING_MINOR, type InstallSettings } from '../../../core/install.ts'
import { sayMoney } from '../../../core/money.ts'
import { sayUnitPrice } from '../../../core/unit-price.ts'
import { spellUnits } from '../parts/units-fields.tsx'

/**
 * A setting as its field shows it, for one who must choose between two.
 *
 * @example spellSetting({ …, units: { system: 'us', gallon: 'us', decimal: '.' } }, 'units') // 'in, gal, °F; US gallon; decimal point'
 */
export function spellSetting(install: InstallSettings, key: keyof InstallSettings): string {
  const { units, paper, energyPriceMinor, currency } = install
  if (key === 'units') return spellUnits(units)
  if (key === 'mode') return install.mode === 'club' ? 'Club' : 'Store'
  if (key === 'paper') return paper === 'a4' ? 'A4' : 'US Letter'
  if (key === 'energyPriceMinor') return sayUnitPrice(energyPriceMinor, currency)
  if (key === 'circuitVoltageV') return `${install[key]} V`
  if (key === 'circuitCurrentA') return `${install[key]} A`
  if (key === 'leastSavingMinor') return sayMoney(install[key] ?? LEAST_SAVING_MINOR, currency)
  return install[key]
}
