/** Codes that the names know and that are no country: unions, test codes and the unknown. */
const NO_COUNTRY = new Set(['EU', 'EZ', 'UN', 'XA', 'XB', 'ZZ', 'QO'])

export const NO_COUNTRY_WORDS = 'No country has this code. Write two letters, like US.'

/**
 * The country of a code of ISO 3166-1; null where there is none.
 *
 * @example countryName('ge') // 'Georgia'
 */
export function countryName(typed: string): string | null {
  const code = typed.trim().toUpperCase()
  if (!/^[A-Z]{2}$/.test(code) || NO_COUNTRY.has(code)) return null
  return new Intl.DisplayNames('en', { type: 'region', fallback: 'none' }).of(code) ?? null
}
