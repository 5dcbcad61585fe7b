/**
 * A sign-in name as it is kept and compared: two that read alike are one, whatever keyboard wrote them.
 *
 * Compatibility forms (full width, ligatures, superscripts) become the plain letter, and case is taken out by way of the capital, so that
 * "ß" and "ss", or the two small sigmas, are one. Letters of other scripts stay what they are: a Cyrillic "а" is no Latin "a".
 * Source: Unicode Standard Annex 15 (NFKC) and Unicode Standard, section 3.13, caseless matching of compatibility forms.
 *
 * @example foldSignInName('Ｉnes') // 'ines'
 */
export function foldSignInName(name: string): string {
  const capitals = name.trim().normalize('NFKC').toUpperCase()
  // Sign by sign: a whole word would give the last sigma its other form.
  return Array.from(capitals, (sign) => sign.toLowerCase())
    .join('')
    .normalize('NFKC')
}
