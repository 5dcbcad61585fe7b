/**
 * Where something that is made at an even rate settles under equal water changes: highest right before a change, lowest right after it.
 *
 * Units:  what is made between two changes, in any concentration; share changed each time (above 0, to 1); the same concentration out.
 * Source: mass balance: what a change takes out is what was made since the last.
 *
 * @example steadyUnderChanges(6.0956, 0.25) // { peak: 24.382, trough: 18.287 }
 */
export const steadyUnderChanges = (made: number, share: number): { peak: number; trough: number } => ({
  peak: made / share,
  trough: (made * (1 - share)) / share,
})

/** Share to change each time so that the peak stays at a limit; above 1 no change does it. @example shareToHold(10, 40) // 0.25 */
export const shareToHold = (made: number, limit: number): number => made / limit
