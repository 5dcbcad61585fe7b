import type { Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import { isPackSlot } from '../../../core/quote/pack-cover.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import { bestFirst, candidateOf, illFittingSlots, type Candidate } from './candidates.ts'
import { editDraft } from './draft-edit.ts'
import { isAsked, lackOfHeat, lacksItsSump, leastShort, mayWantLid, sumpWanted, usualSlots } from './fill-order.ts'
import { fillByPacks, shortSlots } from './fill-packs.ts'
import { unanswered } from './next-slot.ts'

/** What may fill a slot: products with the prices seen of them. */
export interface Offered {
  products: Product[]
  prices: PriceView[]
}

/** More pieces or packs than this of one product are a choice to be made by hand. */
const MOST_PIECES = 8

export interface Filled {
  inputs: QuoteInputs
  filled: Slot[]
  /** Required or usual, and nothing in the catalog that has a price is known to fit. */
  left: Slot[]
}

/** A product that led to a slot which nothing then fitted is passed over in the next try; after this many the rest is for the advisor. */
const MOST_TRIES = 5

/**
 * Puts into each slot that must be filled, or as a rule is, and is still empty the product that fits and adds least to the total (where none does, one that is marginal), one slot after
 * the other, so that each sees what came before it. A slot that nothing fits stays empty. The tank is never chosen: everything else follows from it.
 *
 * What is bought by the pack is filled by sizes that may mix, up to what is needed; packs that do not go far enough get more beside them. Lid, light
 * and bed of a fresh-water tank go in first, so that its heaters are found for it as it will stand; where no heater holds an open marine tank well, a lid does.
 * A return pump gets its sump.
 *
 * `newLineId` makes the ids, since ids are made outside. `offer` reads a slot's products; a failure is its caller's.
 *
 * @example (await fillRest(inputs, buildId, offer, newId)).filled // ['cover', 'filter', 'heat']
 */
export async function fillRest(
  inputs: QuoteInputs,
  buildId: string,
  offer: (slot: Slot) => Promise<Offered>,
  newLineId: () => string,
): Promise<Filled> {
  const read = new Map<Slot, Promise<Offered>>()
  const offerOnce = (slot: Slot): Promise<Offered> => {
    const known = read.get(slot) ?? offer(slot)
    read.set(slot, known)
    return known
  }
  const usual = usualSlots(inputs, buildOf({ inputs }, buildId))
  const open = await fillInTries(inputs, buildId, offerOnce, newLineId, usual)
  if (usual.includes('cover') || !mayWantLid(buildOf(open, buildId))) return open
  const covered = await fillInTries(inputs, buildId, offerOnce, newLineId, ['cover', ...usual])
  return lackOfHeat(buildOf(covered, buildId)) < lackOfHeat(buildOf(open, buildId)) ? covered : open
}

const buildOf = ({ inputs }: Pick<Filled, 'inputs'>, buildId: string): WorkedBuild =>
  workBuild(
    inputs,
    inputs.draft.builds.findIndex((build) => build.id === buildId),
  )

/** `first` are slots that are filled before the others, though nothing requires them. */
async function fillInTries(
  inputs: QuoteInputs,
  buildId: string,
  offer: (slot: Slot) => Promise<Offered>,
  newLineId: () => string,
  first: readonly Slot[],
): Promise<Filled> {
  const passedOver = new Set<string>()
  for (let tries = 1; ; tries += 1) {
    const { placed, left, ...result } = await fillOnce(inputs, buildId, offer, newLineId, { first, passedOver })
    const culprits = placed.filter(({ spoils }) => spoils.some((slot) => left.includes(slot)))
    if (culprits.length === 0 || tries === MOST_TRIES) return { ...result, left }
    for (const { productId } of culprits) passedOver.add(productId)
  }
}

/** A product put in, and the open slots that something must now be found for, or it does not fit. */
interface Placed {
  productId: string
  spoils: Slot[]
}

async function fillOnce(
  inputs: QuoteInputs,
  buildId: string,
  offer: (slot: Slot) => Promise<Offered>,
  newLineId: () => string,
  { first, passedOver }: { first: readonly Slot[]; passedOver: ReadonlySet<string> },
): Promise<Filled & { placed: Placed[] }> {
  const index = inputs.draft.builds.findIndex((build) => build.id === buildId)
  const [filled, left, placed]: [Slot[], Slot[], Placed[]] = [[], [], []]
  let now = inputs
  for (;;) {
    const build = workBuild(now, index)
    const short = shortSlots(build).filter((one) => !filled.includes(one))
    const early = first.filter((one) => !filled.includes(one))
    const slot = [...early, ...sumpWanted(now, build), ...unanswered(build), ...short].find(
      (one) => one !== 'hold_water' && !left.includes(one),
    )
    if (slot === undefined) return { inputs: now, filled, left, placed }
    const all = await offer(slot)
    const offered = { ...all, products: all.products.filter((product) => !passedOver.has(product.id)) }
    const packed = isPackSlot(slot) ? fillByPacks(now, build, slot, offered, newLineId) : null
    const best = packed || short.some((one) => one === slot) ? null : await cheapestFit(now, build, slot, offered)
    if (packed) {
      now = packed
      filled.push(slot)
    } else if (best) {
      now = withLine(now, build.id, best, offered, newLineId())
      filled.push(slot)
      placed.push({ productId: best.product.id, spoils: spoiledBy(best, build) })
    } else left.push(slot)
  }
}

/** Slots with a part that does not fit only since this is in place. */
function spoiledBy(candidate: Candidate, build: WorkedBuild): Slot[] {
  const before = illFittingSlots(build)
  return candidate.illFitting.filter((slot) => !before.includes(slot))
}

/**
 * One piece where one fits, else as few as do; where nothing fits without reserve, what is marginal. What is not known to fit (but for a sump, whose own room
 * waits for the height of the overflow), or keeps a part that is there
 * already from fitting, is not taken. Of lights that fit, one that spans the tank comes before a cheaper one that does not; what states the figures that are
 * read comes before what does not; heaters of the power that the slot asks for come before stronger ones.
 */
async function cheapestFit(inputs: QuoteInputs, build: WorkedBuild, slot: Slot, offered: Offered): Promise<Candidate | null> {
  const seen = new Set(offered.prices.map((price) => price.productId))
  const priced = offered.products.filter((product) => seen.has(product.id) && !lacksItsSump(product, build))
  const open = unanswered(build)
  const shortOf = leastShort(build)
  let marginal: Candidate | undefined
  for (let quantity = 1; quantity <= MOST_PIECES; quantity += 1) {
    await breath()
    const tried = priced
      .map((product) => candidateOf(product, { inputs, build, slot, quantity, replaces: [], fetched: offered }))
      .filter((one) => one.offer !== null && one.totalMinor !== null && spoiledBy(one, build).every((spoiled) => open.includes(spoiled)))
      .toSorted(bestFirst)
      .toSorted((a, b) => shortOf(a.product) - shortOf(b.product))
    const fit = tried.find((one) => one.verdict === null || one.verdict === 'fits')
    const asked = tried.find((one) => isAsked(build, one.product, quantity) && (one.verdict === 'fits' || one.verdict === 'marginal'))
    if (asked) return asked
    if (fit) return fit
    marginal ??= tried.find((one) => one.verdict === 'marginal' || (slot === 'sump' && one.verdict === 'not_known'))
  }
  return marginal ?? null
}

/** Between rounds the screen may draw and take a key: each round is many runs of the rules. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))

function withLine(inputs: QuoteInputs, buildId: string, { product, line }: Candidate, offered: Offered, id: string): QuoteInputs {
  const known = new Set(inputs.products.map((one) => one.id))
  return {
    ...inputs,
    draft: editDraft(inputs.draft, { do: 'put_line', buildId, line: { ...line, id }, replaces: [] }),
    products: known.has(product.id) ? inputs.products : [...inputs.products, product],
    prices: [
      ...inputs.prices.filter((price) => price.productId !== product.id),
      ...offered.prices.filter((price) => price.productId === product.id),
    ],
  }
}
