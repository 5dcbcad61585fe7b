import { buildNames } from '../../../core/quote/build-names.ts'
import type { Build } from '../../../core/quote/draft.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'

/** A build in the units of whoever sits at the desk, whatever the customer reads. */
export const assembleForDesk = (inputs: QuoteInputs, index: number): WorkedBuild =>
  workBuild({ ...inputs, draft: { ...inputs.draft, units: undefined } }, index)

interface Kept {
  /** Everything a build's figures depend on, in one order. */
  on: readonly unknown[]
  build: WorkedBuild
}

function dependsOn(inputs: QuoteInputs, build: Build, index: number, name: string | undefined): readonly unknown[] {
  const { draft, products, stores, prices, install, asOf, rates, regions } = inputs
  const { need, suggestion, standsUntil, units, discount, deposit } = draft
  return [
    index,
    build,
    name,
    need,
    suggestion,
    standsUntil,
    units,
    discount,
    deposit,
    products,
    stores,
    prices,
    install,
    asOf,
    rates,
    regions,
  ]
}

/**
 * Works out every build of a draft and keeps what has not changed, so that an edit of one build costs that build alone.
 *
 * Relies on edits that leave untouched parts the same objects (`editDraft`).
 *
 * @example const assemble = makeAssembler(); assemble(inputs)[0] === assemble(inputs)[0] // true: nothing was computed again
 */
export function makeAssembler(
  work: (inputs: QuoteInputs, index: number) => WorkedBuild = workBuild,
): (inputs: QuoteInputs) => WorkedBuild[] {
  let kept = new Map<string, Kept>()
  return (inputs) => {
    const next = new Map<string, Kept>()
    // One build's name follows the others': told apart where two stand on one tank.
    const names = buildNames(inputs.draft, new Map(inputs.products.map((product) => [product.id, product])))
    const builds = inputs.draft.builds.map((build, index) => {
      const on = dependsOn(inputs, build, index, names[index])
      const before = kept.get(build.id)
      const same = before?.on.every((value, at) => Object.is(value, on[at])) ?? false
      const entry = before && same ? before : { on, build: work(inputs, index) }
      next.set(build.id, entry)
      return entry.build
    })
    kept = next
    return builds
  }
}
