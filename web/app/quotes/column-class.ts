/** Classes of a cell in a build's column: watered where it is the chosen one; on a phone only that one is shown. */
export function columnClass(isChosen: boolean, ...others: Array<string | false | null | undefined>): string {
  return [isChosen ? 'sel' : 'other', ...others].filter(Boolean).join(' ')
}
