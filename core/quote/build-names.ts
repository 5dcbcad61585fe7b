import { BUILD_LETTERS, type Build, type QuoteDraft } from './draft.ts'
import type { ProductsById } from './kit-parts.ts'

/** What a build stands on: the tank that is bought or owned, else the kit that brings one; null while there is neither. */
function tankOf(build: Build, products: ProductsById): string | null {
  const named = (kind: 'tank' | 'kit'): string | undefined =>
    build.lines.flatMap((line) => {
      const product = 'productId' in line && line.productId !== null ? products.get(line.productId) : undefined
      return product?.kind === kind ? [product.name] : []
    })[0]
  const own = build.lines.find((line) => line.answer === 'owned' && line.slot === 'hold_water')
  return named('tank') ?? named('kit') ?? (own ? 'The tank you have' : null)
}

/** Names that the desk itself gave before builds were named after their tanks, and what a copy made of them: nobody chose them. */
const GIVEN_BY_DESK = /^(?:First|Second|Third|Fourth) build(?: \d{1,2})?$/
const chosenName = ({ name }: Build): string => (GIVEN_BY_DESK.test(name.trim()) ? '' : name.trim())

/**
 * What each build is called, in order: as the advisor named it, else after its tank; told apart by its letter where another has that name.
 *
 * @example buildNames(draft, products) // ['Halden 29', 'Long and deep', 'Halden 29, option C', 'Build D'] with names '', 'Long and deep', '', ''
 */
export function buildNames({ builds }: Pick<QuoteDraft, 'builds'>, products: ProductsById): string[] {
  const taken = new Set(builds.map(chosenName))
  return builds.map((build, index) => {
    const chosen = chosenName(build)
    if (chosen !== '') return chosen
    const letter = BUILD_LETTERS[index] ?? ''
    const tank = tankOf(build, products)
    const name = tank === null ? `Build ${letter}` : taken.has(tank) ? `${tank}, option ${letter}` : tank
    taken.add(name)
    return name
  })
}
