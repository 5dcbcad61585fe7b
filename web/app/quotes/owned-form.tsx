import { useRef, useState, type ReactElement } from 'react'
import { SLOT_OF, type Kind, type Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { ProductPicker } from '../parts/product-picker.tsx'
import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import type { SlotFormProps } from './not-needed-form.tsx'
import { BesideKit, besideField, kitFills } from './beside-kit.tsx'
import { focusFault } from './focus-fault.ts'
import { usePendingAnswer, type PutAnswer } from './pending-answer.ts'
import { useCustomerGear } from './use-customer-gear.ts'
import { useAnswerSlot } from './use-answer-slot.ts'
import { OwnedSpecFields, readOwnedSpec, type SpecTexts } from './owned-spec-fields.tsx'

const KIND_OF = Object.fromEntries(Object.entries(SLOT_OF).map(([kind, slot]) => [slot, kind])) as Record<Slot, Exclude<Kind, 'kit'>>

const NAMELESS = 'Choose a product or say what it is, like “old 150 W heater”.'

/** What the customer has at home: a product of the catalog, or a description with what someone read off it. An unread figure stays unknown. */
export function OwnedForm({ build, slot, lines }: SlotFormProps): ReactElement {
  const { reader, state } = useDesk()
  const answerSlot = useAnswerSlot(build, slot)
  const [product, setProduct] = useState<Product | null>(null)
  const [description, setDescription] = useState('')
  const [quantity, setQuantity] = useState<number | null>(1)
  const [texts, setTexts] = useState<SpecTexts>({})
  const [beside, setBeside] = useState(false)
  const [tried, setTried] = useState(false)
  const [kept, setKept] = useState(true)
  const { keep } = useCustomerGear()
  const form = useRef<HTMLFormElement>(null)
  const kind = KIND_OF[slot]
  const described = product !== null || description.trim() !== ''
  const stated = product ? { spec: null, faults: {} } : readOwnedSpec(kind, texts, reader)
  const put: PutAnswer = (then) => {
    setTried(true)
    if (!described || quantity === null || Object.keys(stated.faults).length > 0) return focusFault(form.current)
    const words = { productId: product?.id ?? null, description: product ? '' : description.trim() }
    const line = { id: newId(), answer: 'owned' as const, slot, quantity, spec: stated.spec, ...words, ...besideField(beside) }
    const replaces = lines.map((one) => one.id)
    const answer = (): void => {
      answerSlot({ do: 'put_line', buildId: build.id, line, replaces }, { products: product ? [product] : [], prices: [] })
      then()
    }
    if (kept && state.view.customer.erasedOn === null) keep.mutate(line, { onSuccess: answer })
    else answer()
  }
  usePendingAnswer(described || Object.values(texts).some((text) => text?.trim()), put)
  return (
    <form
      className="form"
      noValidate
      ref={form}
      onSubmit={(event) => {
        event.preventDefault()
        put(() => {})
      }}
    >
      {product ? (
        <p>
          {product.name}{' '}
          <Button small look="plain" onClick={() => setProduct(null)}>
            Not this one
          </Button>
        </p>
      ) : (
        <>
          <ProductPicker label="A product of the catalog, if it is one" kind={kind} onPick={setProduct} />
          <TextField
            label="Or in words"
            value={description}
            maxLength={200}
            fault={tried && !described ? NAMELESS : null}
            onChange={setDescription}
          />
          <OwnedSpecFields kind={kind} texts={texts} faults={tried ? stated.faults : {}} onChange={setTexts} />
        </>
      )}
      <QuantityField label="How many" unit="count" whole min={1} max={999} value={quantity} onChange={setQuantity} />
      {kitFills(build, slot) && <BesideKit beside={beside} onChange={setBeside} />}
      {state.view.customer.erasedOn === null && (
        <TickField label="Keep it with the customer, for the next quote" checked={kept} onChange={setKept} />
      )}
      <ErrorNotice error={keep.error} />
      <p>
        <Button type="submit" busy={keep.isPending}>
          Say it is already owned
        </Button>
      </p>
    </form>
  )
}
