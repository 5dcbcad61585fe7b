import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState, type KeyboardEvent, type ReactElement } from 'react'
import { getCustomer, listCustomers } from '../client/customers.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'

/** A customer on record, or a new one by name and how to reach them. */
export interface ChosenCustomer {
  id: string | null
  name: string
  reach: string
}

interface Props {
  chosen: ChosenCustomer
  fault: string | null
  onChange: (customer: ChosenCustomer) => void
}

/** As many as can be told apart at a glance; more words narrow it. */
const OFFERED = 6

/** Typing finds the ones on record; who is none of them is new, here in place. */
export function CustomerChoice({ chosen, fault, onChange }: Props): ReactElement {
  return (
    <fieldset className="customer-choice">
      <legend>The customer</legend>
      {chosen.id ? (
        <Known id={chosen.id} onOther={() => onChange({ id: null, name: '', reach: '' })} />
      ) : (
        <Asked chosen={chosen} fault={fault} onChange={onChange} />
      )}
    </fieldset>
  )
}

function Known({ id, onOther }: { id: string; onOther: () => void }): ReactElement {
  const customer = useQuery({ queryKey: ['customers', 'one', id], queryFn: () => getCustomer(id) })
  if (customer.isError) return <ErrorNotice error={customer.error} onRetry={() => void customer.refetch()} />
  return (
    <p>
      <strong>{customer.data?.value.name}</strong>{' '}
      {customer.data?.value.reach && <span className="quiet">{customer.data.value.reach} </span>}
      <Button small look="plain" onClick={onOther}>
        Someone else
      </Button>
    </p>
  )
}

const holds = ({ name, reach }: { name: string; reach: string }, words: string): boolean =>
  `${name}\n${reach}`.toLowerCase().includes(words.toLowerCase())

/** Up and down go through the ones on record, round at the ends; Enter takes the marked one, Escape marks none. */
function useMarked(count: number, take: (index: number) => void) {
  const [held, mark] = useState(0)
  const marked = count === 0 || held < 0 ? -1 : Math.min(held, count - 1)
  const onKeyDown = (event: KeyboardEvent): void => {
    if (count === 0) return
    if (event.key === 'ArrowDown') mark((marked + 1) % count)
    else if (event.key === 'ArrowUp') mark((Math.max(marked, 0) + count - 1) % count)
    else if (event.key === 'Escape') mark(-1)
    else if (event.key === 'Enter' && marked >= 0) take(marked)
    else return
    event.preventDefault()
  }
  return { marked, mark, onKeyDown }
}

function Asked({ chosen, fault, onChange }: Props): ReactElement {
  const [touched, setTouched] = useState(false)
  const words = chosen.name.trim()
  const found = useQuery({
    queryKey: ['customers', words],
    queryFn: () => listCustomers(words),
    placeholderData: keepPreviousData,
    enabled: touched,
  })
  // The list of the last words stands until the next is read: who does not match any more would be in the way of the Tab key.
  const known = (found.data ?? []).filter((customer) => !customer.erasedOn && holds(customer, words)).slice(0, OFFERED)
  const offered = words === '' ? [] : known
  const take = (index: number): void => onChange({ id: offered[index]?.id ?? null, name: '', reach: '' })
  const { marked, mark, onKeyDown } = useMarked(offered.length, take)
  return (
    <div className="form">
      <TextField
        label="Name"
        focusFirst
        onKeyDown={onKeyDown}
        help={
          marked < 0 ? undefined : `Enter takes ${offered[marked]?.name}. The arrow keys choose another; Tab goes on with a new customer.`
        }
        value={chosen.name}
        fault={fault}
        maxLength={120}
        onChange={(name) => {
          setTouched(true)
          mark(0)
          onChange({ ...chosen, name })
        }}
      />
      {offered.length > 0 && (
        <div>
          <p className="label">On record</p>
          <ul className="known-customers">
            {offered.map((customer, index) => (
              <li key={customer.id} data-marked={index === marked || undefined}>
                <Button small onClick={() => take(index)}>
                  {customer.name}
                  {customer.reach && <span className="quiet">{customer.reach}</span>}
                </Button>
              </li>
            ))}
          </ul>
        </div>
      )}
      {words !== '' && (
        <TextField
          label="How to reach them"
          required={false}
          help="Only for a new customer: e-mail, telephone."
          value={chosen.reach}
          maxLength={200}
          onChange={(reach) => onChange({ ...chosen, reach })}
        />
      )}
    </div>
  )
}
