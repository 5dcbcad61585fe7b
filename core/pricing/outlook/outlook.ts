/**
 * What to expect of prices: the whole contract of this folder.
 *
 * `learn` once a night over a region's record; `planOf` for what somebody wants to buy; then `outlookOf` for screens and paper, `decide` for a
 * shopper who looks every day, `waitingDraws` to hold the forecast against what came.
 */
export type { Ask, AskedLine, SeenDay, SeenOffer } from './ask.ts'
export type { Learned } from './learned.ts'
export type { MarketRecord, SaleWindow } from './market-record.ts'
export { learn, learnFrom } from './learn.ts'
export { decide, planOf, type Plan } from './plan.ts'
export { waitingDraws, type WaitingDraws } from './waiting-draws.ts'
export { outlookOf, type LineOutlook, type Outlook } from './line-outlook.ts'
export { sayAdvice, type AdviceReader, type AdviceWords } from './say-advice.ts'
