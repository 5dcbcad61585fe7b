import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
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
  return (
    <div className="form">
      <TextField
        label="Name"
        focusFirst
        value={chosen.name}
        fault={fault}
        maxLength={120}
        onChange={(name) => {
          setTouched(true)
          onChange({ ...chosen, name })
        }}
      />
      {words !== '' && known.length > 0 && (
        <div>
          <p className="label">On record</p>
          <ul className="known-customers">
            {known.map((customer) => (
              <li key={customer.id}>
                <Button small onClick={() => onChange({ id: customer.id, name: '', reach: '' })}>
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
