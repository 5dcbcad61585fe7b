/** Classes of a cell in a build's column: watered where it is the chosen one. */
export function columnClass(isChosen: boolean, ...others: Array<string | false | null | undefined>): string {
  return [isChosen && 'sel', ...others].filter(Boolean).join(' ')
}
