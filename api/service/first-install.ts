import type { Install } from '../../core/install.ts'

/**
 * What a fresh install says of itself until its manager opens *Settings*. Country and units are the commoner of the two readers
 * this release knows; the time zone is the machine's. The price of electricity is a usual household price in the United States, 17 cents.
 */
export function firstInstall(timeZone: string): Install {
  return {
    name: 'Our club',
    mode: 'club',
    currency: 'USD',
    country: 'US',
    timeZone,
    units: { system: 'us', gallon: 'us', decimal: '.' },
    contact: '',
    paper: 'letter',
    energyPriceMinor: 17,
    circuitVoltageV: 120,
    circuitCurrentA: 15,
  }
}
