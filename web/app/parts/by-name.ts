const ORDER = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

/**
 * Names as a person sorts them: 30 before 100.
 *
 * @example ['Strand 100', 'Strand 30'].map((name) => ({ name })).toSorted(byName)[0] // { name: 'Strand 30' }
 */
export const byName = (a: { name: string }, b: { name: string }): number => ORDER.compare(a.name, b.name)
