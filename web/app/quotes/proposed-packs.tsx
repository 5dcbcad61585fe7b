import { useState, type ReactElement } from 'react'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { Button } from '../parts/button.tsx'
import { useDesk } from './desk-context.ts'
import { sayDifference } from './tier-words.ts'

/** Packs that bring what is missing: the lines they would be, and what was read to find them. */
export interface PackProposal {
  lines: BuildLine[]
  products: Product[]
  prices: PriceView[]
}

/** "2 × Millrace gravel 5 L, adds $14.00", and the press that puts them in: until then nothing of the build has changed. */
export function ProposedPacks({ build, mix }: { build: WorkedBuild; mix: PackProposal }): ReactElement | null {
  const { inputs, edit, priced } = useDesk()
  const [put, setPut] = useState(false)
  const index = inputs.draft.builds.findIndex((one) => one.id === build.id)
  const own = inputs.draft.builds[index]
  if (put || own === undefined) return null
  const lines = [...own.lines, ...mix.lines]
  const builds = inputs.draft.builds.map((one) => (one === own ? { ...own, lines } : one))
  const tried = workBuild({ ...inputs, products: mix.products, prices: mix.prices, draft: { ...inputs.draft, builds } }, index)
  const difference = sayDifference(build.cost.today, tried.cost.today, inputs.install.currency)
  const packs = mix.lines.flatMap((line) => {
    const name = mix.products.find(({ id }) => line.answer === 'buy' && id === line.productId)?.name
    return name === undefined || line.answer !== 'buy' ? [] : [`${line.quantity} × ${name}`]
  })
  return (
    <div className="proposed">
      <p>
        What is missing, at the least cost: {packs.join(', ')}
        {difference && ` (${difference})`}.
      </p>
      <Button
        small
        onClick={() => {
          priced(mix.products, mix.prices)
          for (const line of mix.lines) edit({ do: 'put_line', buildId: build.id, line, replaces: [] })
          setPut(true)
        }}
      >
        Put these in
      </Button>
    </div>
  )
}
