/**
 * Brings someone else's saved change together with what is typed here: a field that was not touched here takes theirs; a touched one stays.
 * `clashes` names the fields that both changed, to different ends.
 *
 * @example mergeTyped({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 3, b: 4 }) // { merged: { a: 2, b: 4 }, clashes: ['a'] }
 */
export function mergeTyped<Fields extends object>(
  base: Fields,
  mine: Fields,
  theirs: Fields,
): { merged: Fields; clashes: Array<keyof Fields & string> } {
  const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)
  const merged = { ...theirs }
  const clashes: Array<keyof Fields & string> = []
  for (const key of Object.keys(mine) as Array<keyof Fields & string>) {
    if (same(mine[key], base[key])) continue
    merged[key] = mine[key]
    if (!same(theirs[key], base[key]) && !same(theirs[key], mine[key])) clashes.push(key)
  }
  return { merged, clashes }
}
