import type { StartupSubject } from './startup-subject.ts'

/** Countries where the device is called a GFCI. */
const GFCI_COUNTRIES = ['US', 'CA', 'MX']

/** What cuts the current when it leaks, by its name in the install's country. @example protectiveDevice({ install: { country: 'US' } }) // 'GFCI' */
export function protectiveDevice({ install }: Pick<StartupSubject, 'install'>): string {
  if (install === undefined) return 'protective device'
  return GFCI_COUNTRIES.includes(install.country) ? 'GFCI' : 'residual-current device'
}
