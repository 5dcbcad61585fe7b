/** What becomes of the watches of a region that is taken out; without a number while it is being counted. @example sayWatchesEnd(0) // 'No watch is of this region.' */
export function sayWatchesEnd(count: number | undefined): string {
  if (count === 0) return 'No watch is of this region.'
  if (count === 1) return 'One watch is of this region and ends; its owner is told so in the list of watches.'
  return `${count === undefined ? 'Watches of this region' : `${count} watches are of this region and`} end; their owners are told so in their list.`
}

/** What becomes of them where its stores change. @example sayWatchesMove(2) // '2 watches are of this region: they will go by the stores that are ticked.' */
export const sayWatchesMove = (count: number): string =>
  count === 1
    ? 'One watch is of this region: it will go by the stores that are ticked.'
    : `${count} watches are of this region: they will go by the stores that are ticked.`
