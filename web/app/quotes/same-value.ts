/**
 * Whether two plain JSON values say the same, whatever the order of their fields; an absent field and an undefined one are the same.
 *
 * @example sameValue({ a: 1, b: [2] }, { b: [2], a: 1 }) // true
 */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null || Array.isArray(a) !== Array.isArray(b)) return false
  const left = a as Record<string, unknown>
  const right = b as Record<string, unknown>
  if (Array.isArray(a) && Array.isArray(b) && a.length !== b.length) return false
  return [...new Set([...Object.keys(left), ...Object.keys(right)])].every((key) => sameValue(left[key], right[key]))
}
