/** Under which the account keeps how one hears of deals. */
export const HEARING = ['hearing'] as const
