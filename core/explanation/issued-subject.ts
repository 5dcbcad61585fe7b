import { gearOf } from '../quote/gear.ts'
import type { AssembledBuild, RevisionDocument } from '../quote/revision.ts'
import type { SizingSubject } from '../sizing/report.ts'

/**
 * What a build of an issued quote is, and the room it was reckoned for, out of the document's own inputs. Undefined for a build that they no longer hold.
 *
 * @example issuedSubject(document, document.builds[0])?.conditions === document.conditions // true
 */
export function issuedSubject({ inputs, conditions }: RevisionDocument, { id }: AssembledBuild): SizingSubject | undefined {
  const build = inputs.draft.builds.find((each) => each.id === id)
  return build && { gear: gearOf(build, new Map(inputs.products.map((product) => [product.id, product]))), conditions }
}
