import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { ProductPicker } from '../parts/product-picker.tsx'
import type { ProductDraft } from './product-draft.ts'

interface Props {
  parts: ProductDraft['parts']
  faults: Record<string, string>
  /** The kit itself, once it exists: it cannot contain itself. */
  kitId?: string | undefined
  onChange: (parts: ProductDraft['parts']) => void
}

const MOST_OF_ONE = 99

/** What is in the box. Each part carries its own spec and fills its own slot. */
export function KitParts({ parts, faults, kitId, onChange }: Props): ReactElement {
  const except = [...parts.map(({ productId }) => productId), ...(kitId ? [kitId] : [])]
  const setQuantity = (index: number, text: string): void => {
    const quantity = Math.min(MOST_OF_ONE, Math.max(1, Math.trunc(Number(text)) || 1))
    onChange(parts.map((part, at) => (at === index ? { ...part, quantity } : part)))
  }
  const partFault = Object.entries(faults).find(([field]) => field === 'parts' || field.startsWith('parts.'))?.[1]
  return (
    <section className="form" aria-labelledby="parts-head">
      <div className="sechead">
        <h2 id="parts-head">In the box</h2>
        <p className="quiet">Each part fills its own slot of a build.</p>
      </div>
      {parts.length > 0 && (
        <ul className="kit-parts">
          {parts.map((part, index) => (
            <li key={part.productId}>
              <label>
                <span className="sr">How many: {part.name}</span>
                <input
                  type="number"
                  min={1}
                  max={MOST_OF_ONE}
                  value={part.quantity}
                  onChange={(event) => setQuantity(index, event.target.value)}
                />
              </label>
              <span>{part.name}</span>
              <Button
                look="plain"
                small
                aria-label={`Take out ${part.name}`}
                onClick={() => onChange(parts.filter((_, at) => at !== index))}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      )}
      <ProductPicker
        label="Add a part"
        except={except}
        fault={partFault ?? null}
        help="A kit contains products, never another kit."
        onPick={(product) => onChange([...parts, { productId: product.id, quantity: 1, name: product.name }])}
      />
    </section>
  )
}
