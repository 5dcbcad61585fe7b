import { useMemo, useState, type ReactElement } from 'react'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { SpecFilters } from '../catalog/spec-filters.tsx'
import { SelectField, TickField } from '../parts/choice-fields.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { newId } from '../post/new-id.ts'
import { isPackSlot } from '../../../core/quote/pack-cover.ts'
import { BesideKit, kitFills } from './beside-kit.tsx'
import { CandidateList } from './candidate-list.tsx'
import { readSearch, type Candidate } from './candidates.ts'
import { useDesk } from './desk-context.ts'
import type { Want } from './meets-want.ts'
import type { SlotFormProps } from './not-needed-form.tsx'
import { useAnswerSlot } from './use-answer-slot.ts'
import { ownKind, useCandidates } from './use-candidates.ts'
import { specOf, WatchForSlot } from './watch-for-slot.tsx'

const ADD = ''

/** Type-ahead over the catalog for one slot, each product with what it does to this build's total and verdicts. Enter takes the first. */
export function ProductSearch({ build, slot, lines, want }: SlotFormProps & { want: Want | null }): ReactElement {
  const { inputs, open } = useDesk()
  const answerSlot = useAnswerSlot(build, slot)
  const packed = isPackSlot(slot)
  const [text, setText] = useState('')
  const [filtered, setFiltered] = useState(want !== null)
  const [chosenQuantity, setChosenQuantity] = useState<number | null>(packed ? null : (want?.quantity ?? 1))
  const [placeOf, setPlaceOf] = useState(lines[0]?.id ?? ADD)
  const [beside, setBeside] = useState(false)
  const [spec, setSpec] = useState('')
  const [kind] = ownKind(slot)
  const asked = readSearch(text)
  const quantity = asked.quantity ?? chosenQuantity
  const replaces = useMemo(() => placesTaken(lines, placeOf), [lines, placeOf])
  const found = useCandidates({ build, slot, quantity, replaces, beside, words: asked.words, want: filtered ? want : null, spec })
  // A count in this field takes the place of one that was typed in front of the words.
  const count = (value: number | null): void => {
    setChosenQuantity(value)
    setText(asked.words)
  }
  const take = (candidate: Candidate): void => {
    const products = [candidate.product, ...found.partsOf(candidate.product)]
    const line = { ...candidate.line, id: newId() }
    answerSlot({ do: 'put_line', buildId: build.id, line, replaces }, { products, prices: found.pricesOf(candidate.product) })
  }
  return (
    <div className="product-search">
      <CandidateList
        slot={slot}
        text={text}
        onType={setText}
        found={found}
        onTake={take}
        onOther={(other) => open({ at: 'cell', buildId: build.id, slot: other, want: null })}
      />
      {kind && <SpecFilters kind={kind} spec={spec} onChange={setSpec} />}
      {kind && <WatchForSlot kind={kind} spec={spec || specOf(kind, filtered ? want : null)} letter={build.letter} />}
      <div className="form-row">
        <QuantityField
          label="How many"
          unit="count"
          whole
          min={1}
          max={999}
          value={quantity}
          {...(packed ? { help: 'Empty: as many packs as it takes.' } : {})}
          onChange={(value, fault) => (value !== null || (packed && fault === null)) && count(value)}
        />
        {lines.length > 0 && (
          <SelectField
            label="In place of"
            value={placeOf}
            none="nothing, add it"
            options={placeOptions(lines, inputs.products)}
            onChange={setPlaceOf}
          />
        )}
      </div>
      {kitFills(build, slot) && <BesideKit beside={beside} onChange={setBeside} />}
      {want && <TickField label="Only what settles the finding" checked={filtered} onChange={setFiltered} />}
    </div>
  )
}

/** A "not needed" goes with any product chosen; a bought or owned one only where the product takes its place. */
function placesTaken(lines: BuildLine[], placeOf: string): string[] {
  return lines.filter((line) => line.answer === 'not_needed' || line.id === placeOf).map((line) => line.id)
}

function placeOptions(lines: BuildLine[], products: Array<{ id: string; name: string }>): Array<{ value: string; label: string }> {
  return lines
    .filter((line) => line.answer !== 'not_needed')
    .map((line) => ({
      value: line.id,
      label:
        products.find((product) => product.id === line.productId)?.name ??
        (line.answer === 'owned' ? line.description : 'a product that is gone'),
    }))
}
