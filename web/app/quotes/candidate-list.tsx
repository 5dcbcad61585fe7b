import { useEffect, useId, useRef, useState, type KeyboardEvent, type ReactElement } from 'react'
import { SLOT_NAMES, SLOT_PLAIN_NAMES, type Slot } from '../../../core/catalog/kinds.ts'
import { sayMoney } from '../../../core/money.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { ProductThumb } from '../parts/product-thumb.tsx'
import { Verdict } from '../parts/verdict.tsx'
import { readSearch, type Candidate } from './candidates.ts'
import { useDesk } from './desk-context.ts'
import { otherSlot } from './other-slot.ts'
import { sayProduct } from './product-words.ts'
import type { Found } from './use-candidates.ts'

interface Props {
  slot: Slot
  text: string
  onType: (text: string) => void
  found: Found
  onTake: (candidate: Candidate) => void
  /** Opens another slot of the build, where the words name what goes there. */
  onOther: (slot: Slot) => void
}

/** The dialog opens with the cursor here: the browser's own modal goes to the element that says so; one that is open already is told. */
const focusFirst = (input: HTMLInputElement | null): void => {
  input?.setAttribute('autofocus', '')
  input?.focus()
}

/** The search line and its list: arrows move, Enter takes, a press takes. */
export function CandidateList({ slot, text, onType, found, onTake, onOther }: Props): ReactElement {
  const id = useId()
  const [at, setAt] = useState(0)
  const { candidates } = found
  const hasPictures = candidates.some(({ product }) => found.pictures[product.id] !== undefined)
  const takeSoon = useTakeWhenReady(found.state, candidates[Math.min(at, candidates.length - 1)], onTake)
  const active = Math.min(at, candidates.length - 1)
  const move = (event: KeyboardEvent): void => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
    if (step !== 0) {
      event.preventDefault()
      setAt(Math.max(0, Math.min(candidates.length - 1, active + step)))
    }
    if (event.key !== 'Enter') return
    event.preventDefault()
    takeSoon()
  }
  return (
    <div className="candidates">
      <SearchLine
        slot={slot}
        text={text}
        listId={`${id}-list`}
        activeId={candidates[active] ? `${id}-${active}` : undefined}
        onKeyDown={move}
        onType={(next) => {
          onType(next)
          setAt(0)
        }}
      />
      {/* The pattern of an editable list: focus stays in the line above, whose keys move the marked option; no native element does this with rows of three parts. */}
      {/* oxlint-disable jsx-a11y/prefer-tag-over-role, jsx-a11y/click-events-have-key-events, jsx-a11y/interactive-supports-focus */}
      <div role="listbox" id={`${id}-list`} aria-label="Products">
        {candidates.map((candidate, index) => (
          <div
            key={candidate.product.id}
            id={`${id}-${index}`}
            role="option"
            aria-selected={index === active}
            data-pictured={hasPictures || undefined}
            onClick={() => onTake(candidate)}
            onMouseMove={() => setAt(index)}
          >
            {hasPictures && <ProductThumb hash={found.pictures[candidate.product.id]} name="" />}
            <CandidateRow candidate={candidate} />
          </div>
        ))}
      </div>
      {/* oxlint-enable */}
      <Below found={found} />
      {found.state === 'ready' && <OtherSlot words={readSearch(text).words} slot={slot} onOther={onOther} />}
    </div>
  )
}

/** Enter is quicker than the catalog: what it takes is the marked one once the list is of what was typed. */
function useTakeWhenReady(state: Found['state'], chosen: Candidate | undefined, onTake: (candidate: Candidate) => void): () => void {
  const asked = useRef(false)
  useEffect(() => {
    if (!asked.current || state === 'reading') return
    asked.current = false
    if (chosen) onTake(chosen)
  }, [state, chosen, onTake])
  return () => {
    if (state === 'reading') asked.current = true
    else if (chosen) onTake(chosen)
  }
}

interface LineProps {
  slot: Slot
  text: string
  listId: string
  activeId: string | undefined
  onKeyDown: (event: KeyboardEvent) => void
  onType: (text: string) => void
}

function SearchLine({ slot, text, listId, activeId, onKeyDown, onType }: LineProps): ReactElement {
  return (
    <Field
      label={`Find a product: ${SLOT_NAMES[slot]}`}
      help={
        <>
          <span className="by-keys">Arrows and Enter choose and go on. </span>“2 x” in front asks for two.
        </>
      }
    >
      {({ id, describedBy }) => (
        <div className="entry">
          <input
            id={id}
            ref={focusFirst}
            role="combobox"
            aria-expanded
            aria-autocomplete="list"
            aria-controls={listId}
            aria-activedescendant={activeId}
            aria-describedby={describedBy}
            autoComplete="off"
            value={text}
            onKeyDown={onKeyDown}
            onChange={(event) => onType(event.target.value)}
          />
        </div>
      )}
    </Field>
  )
}

function CandidateRow({ candidate }: { candidate: Candidate }): ReactElement {
  const { reader, currency } = useDesk()
  const { product, line, offer, difference, verdict } = candidate
  return (
    <>
      <span className="filler">
        {line.answer === 'buy' && line.quantity > 1 && `${line.quantity} × `}
        {product.name}
        <span className="note">{sayProduct(product, reader)}</span>
      </span>
      <span className="how">{verdict && <Verdict verdict={verdict} />}</span>
      <span className="price">
        {offer ? sayMoney(offer.minor, currency) : <span className="quiet">no price</span>}
        <span className="note">{offer ? [offer.storeName, difference].filter(Boolean).join(', ') : 'no total with it'}</span>
      </span>
    </>
  )
}

/** A sump is no filter: whoever looks for it there is led to where it goes. */
function OtherSlot({ words, slot, onOther }: Pick<Props, 'slot' | 'onOther'> & { words: string }): ReactElement | null {
  const other = otherSlot(words, slot)
  if (!other) return null
  return (
    <p className="note">
      {SLOT_PLAIN_NAMES[other]} has a slot of its own.{' '}
      <Button small onClick={() => onOther(other)}>
        Look in “{SLOT_NAMES[other]}”
      </Button>
    </p>
  )
}

function Below({ found }: { found: Found }): ReactElement | null {
  if (found.state === 'failed')
    return (
      <p className="fault" role="alert">
        The catalog was not reached.{' '}
        <Button small onClick={found.retry}>
          Try again
        </Button>
      </p>
    )
  const words =
    found.state === 'reading' && found.candidates.length === 0
      ? 'Reading the catalog'
      : found.candidates.length === 0
        ? found.settling
          ? 'Nothing in the catalog is known to settle it. Without the tick below everything is shown.'
          : 'Nothing in the catalog fits these words.'
        : found.more
          ? 'More in the catalog: type on.'
          : ''
  return <output className="note">{words}</output>
}
