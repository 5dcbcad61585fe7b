import type { CivilDate } from '../dates.ts'
import { BUILD_LETTERS } from './draft.ts'
import { gearOf } from './gear.ts'
import { goodsCost } from './worked-build.ts'
import type { QuoteInputs } from './revision.ts'

/** What a quote still lacks before it may be issued: the field of the draft, and what to do. */
export interface IssueFault {
  field: string
  message: string
}

/**
 * Why a draft cannot be issued yet; empty where it can. A price that is missing is no fault: the tier is printed as incomplete.
 *
 * `today` is the day at the install. The last day a quote stands may be today.
 *
 * @example issueFaults({ ...inputs, draft: { ...draft, standsUntil: null } }, '2026-10-20')[0]?.field // 'standsUntil'
 */
export function issueFaults(inputs: QuoteInputs, today: CivilDate): IssueFault[] {
  const { draft } = inputs
  const faults: IssueFault[] = []
  const fault = (field: string, message: string): void => void faults.push({ field, message })
  if (hasNoOwnStore(inputs)) fault('ownStore', NO_OWN_STORE)
  if (draft.title === '') fault('title', 'Give the quote a title; it stands on the first page.')
  if (draft.builds.length === 0) fault('builds', 'Put at least one build together.')
  if (draft.standsUntil === null) fault('standsUntil', 'Say until which day the quote stands.')
  else if (draft.standsUntil < today)
    fault('standsUntil', `The quote would stand until ${draft.standsUntil}, which is past. Choose ${today} or later.`)
  if (draft.suggestion !== null && draft.suggestion.reason.trim() === '')
    fault('suggestion.reason', 'Say why this build is suggested; the customer reads it on the first page.')
  if (draft.discount && draft.discount.reason.trim() === '')
    fault('discount.reason', 'Say what the discount is for; the customer reads it beside the figure.')
  if (draft.discount && takesNothingOff(inputs))
    fault(
      'discount',
      'The discount takes nothing off: no build buys goods that it is for. Choose another store or amount for it, or take it out.',
    )
  const products = new Map(inputs.products.map((product) => [product.id, product]))
  draft.builds.forEach((build, index) => {
    const called = `Build ${BUILD_LETTERS[index] ?? index + 1}`
    if (build.lines.length === 0) fault(`builds.${index}.lines`, `${called} is empty. Fill it or take it out.`)
    else if (gearOf(build, products).tank === null)
      fault(`builds.${index}.lines`, `${called} has no tank: add one, or the one the customer owns with its outside size.`)
  })
  return faults
}

const NO_OWN_STORE =
  'This place is run as a store and no store is marked as its own, so that no line has a price. Mark yours: Stores, open it, tick “This is our own store”.'

/** In store mode prices, tax and delivery are those of the own store alone: without one a quote would have no price at all. */
const hasNoOwnStore = ({ install, stores }: QuoteInputs): boolean =>
  install.mode === 'store' && !stores.some(({ own, archived }) => own === true && !archived)

/** Whether every build has a total and none of them gets any of the discount; a build without prices is not known to get none. */
const takesNothingOff = (inputs: QuoteInputs): boolean =>
  inputs.draft.builds.length > 0 &&
  inputs.draft.builds.every((build) => {
    const { today } = goodsCost(build, inputs)
    return today.complete && (today.discountMinor ?? 0) === 0
  })
