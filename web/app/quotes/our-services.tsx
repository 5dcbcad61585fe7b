import { useRef, useState, type ReactElement } from 'react'
import { sayMoney } from '../../../core/money.ts'
import type { OurService } from '../../../core/quote/our-service.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { newId } from '../post/new-id.ts'
import { useDesk } from './desk-context.ts'
import { focusFault } from './focus-fault.ts'
import { usePendingAnswer } from './pending-answer.ts'

/** The work that is asked for most often at the counter; the words are then hers. */
const OFTEN = ['Delivery and carrying in', 'Installation', 'Drilling'] as const

/** Services of a build at our own price: those that stand, and one more. */
export function OurServices({ buildId }: { buildId: string }): ReactElement {
  const { state, edit, currency } = useDesk()
  const services = state.draft.builds.find((build) => build.id === buildId)?.services ?? []
  const set = (next: OurService[]): void => edit({ do: 'set_services', buildId, services: next })
  return (
    <>
      {services.length > 0 && (
        <ul className="lines">
          {services.map((service) => (
            <li key={service.id} className="line-form">
              <div className="top">
                <strong>
                  {service.quantity > 1 && `${service.quantity} × `}
                  {service.name}, {sayMoney(service.priceMinor * service.quantity, currency)}, our price
                </strong>
                <Button small look="plain" onClick={() => set(services.filter((one) => one.id !== service.id))}>
                  Remove<span className="sr"> {service.name}</span>
                </Button>
              </div>
            </li>
          ))}
        </ul>
      )}
      <ServiceForm onAdd={(service) => set([...services, service])} />
    </>
  )
}

const EMPTY = { name: '', quantity: 1 as number | null, priceMinor: null as number | null, refused: false }

function ServiceForm({ onAdd }: { onAdd: (service: OurService) => void }): ReactElement {
  const [typed, setTyped] = useState(EMPTY)
  const [tried, setTried] = useState(false)
  const form = useRef<HTMLFormElement>(null)
  const { name, quantity, priceMinor, refused } = typed
  const put = (then: () => void): void => {
    setTried(true)
    if (name.trim() === '' || quantity === null || priceMinor === null) return focusFault(form.current)
    onAdd({ id: newId(), name: name.trim(), quantity, priceMinor })
    setTyped(EMPTY)
    setTried(false)
    then()
  }
  const focusFirst = (): void => form.current?.querySelector<HTMLElement>('input')?.focus()
  usePendingAnswer(name.trim() !== '' || priceMinor !== null || refused, put)
  return (
    <form
      className="form"
      noValidate
      ref={form}
      onSubmit={(event) => {
        event.preventDefault()
        put(focusFirst)
      }}
    >
      <TextField
        label="What we do"
        value={name}
        maxLength={120}
        fault={tried && name.trim() === '' ? 'Say what is done, like “Drilling”. The customer reads it.' : null}
        onChange={(text) => setTyped((now) => ({ ...now, name: text }))}
      />
      <div className="build-acts">
        {OFTEN.map((words) => (
          <Button key={words} small onClick={() => setTyped((now) => ({ ...now, name: words }))}>
            {words}
          </Button>
        ))}
      </div>
      <div className="form-row">
        <MoneyField
          label="Our price for one, tax in it"
          value={priceMinor}
          least={0}
          fault={tried && priceMinor === null ? 'Write the price, 0 for work that costs nothing.' : null}
          onChange={(minor, fault) => setTyped((now) => ({ ...now, priceMinor: minor, refused: fault !== null }))}
        />
        <QuantityField
          label="How many"
          unit="count"
          whole
          min={1}
          max={999}
          value={quantity}
          onChange={(count) => setTyped((now) => ({ ...now, quantity: count }))}
        />
      </div>
      <p>
        <Button type="submit">Add it at our price</Button>
      </p>
    </form>
  )
}
