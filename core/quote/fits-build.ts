import { SLOT_OF } from '../catalog/kinds.ts'
import type { Product } from '../catalog/product.ts'
import { sizingReport } from '../sizing/engine.ts'
import type { Finding } from '../sizing/finding.ts'
import { slotOfLine } from './kit-parts.ts'
import type { QuoteInputs } from './revision.ts'
import { sizedSubject } from './worked-build.ts'

type Sized = Pick<QuoteInputs, 'draft' | 'products' | 'install'>

/**
 * Whether a build takes a product in its slot, as many as stand there now or one: no check that depends on it says *does not fit*. What fails with
 * any product in that slot is no reason against this one, and neither is what is not known. False for a kit and for an index that no build has.
 *
 * @example fitsBuild(inputs, 0, heaterOf25W) // false: it does not hold the coldest room
 */
export function fitsBuild(inputs: Sized, index: number, product: Product): boolean {
  const build = inputs.draft.builds[index]
  if (build === undefined || product.kind === 'kit') return false
  const slot = SLOT_OF[product.kind]
  const products = [...inputs.products.filter(({ id }) => id !== product.id), product]
  const byId = new Map(products.map((one) => [one.id, one]))
  const others = build.lines.filter((line) => slotOfLine(line, byId) !== slot)
  const standing = build.lines.find((line) => slotOfLine(line, byId) === slot && line.answer !== 'not_needed')
  const quantity = standing !== undefined && 'quantity' in standing ? standing.quantity : 1
  const line = { id: 'candidate', answer: 'buy' as const, productId: product.id, quantity, storeId: null, note: '' }
  const empty = { id: 'candidate', answer: 'not_needed' as const, slot, reason: 'left out' }
  const findingsWith = (lines: typeof build.lines): Finding[] => {
    const builds = inputs.draft.builds.map((one, at) => (at === index ? { ...one, lines } : one))
    const subject = sizedSubject({ ...(inputs as QuoteInputs), products, draft: { ...inputs.draft, builds } }, index)
    return subject === undefined ? [] : sizingReport(subject).findings
  }
  const without = new Map(findingsWith([...others, empty]).map((finding) => [finding.check, told(finding)]))
  return findingsWith([...others, line]).every(
    (finding) => finding.verdict !== 'does_not_fit' || without.get(finding.check) === told(finding),
  )
}

/** What a finding says, to be compared. */
const told = ({ verdict, value, limit }: Finding): string => JSON.stringify([verdict, value, limit])
