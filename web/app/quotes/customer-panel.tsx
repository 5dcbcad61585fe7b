import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { DateField, NoteField, TextField } from '../parts/field.tsx'
import { useDesk } from './desk-context.ts'
import { DocumentUnitsField } from './document-units-field.tsx'
import { TermsFields } from './terms-fields.tsx'

/** For whom, and on what terms. */
export function CustomerPanel(): ReactElement {
  const desk = useDesk()
  const { draft, view } = desk.state
  const { customer } = view
  return (
    <>
      <section className="customer" aria-labelledby="customer-heading">
        <h2 id="customer-heading">Customer</h2>
        <dl className="rows">
          <div>
            <dt>Name</dt>
            <dd>
              {customer.erasedOn ? (
                `erased on ${customer.erasedOn}`
              ) : (
                <Link to="/customers/$customerId" params={{ customerId: customer.id }}>
                  {customer.name}
                </Link>
              )}
            </dd>
          </div>
          <div>
            <dt>Reach</dt>
            <dd>{customer.reach || 'not entered'}</dd>
          </div>
        </dl>
      </section>
      <section className="terms" aria-labelledby="terms-heading">
        <h2 id="terms-heading">Terms</h2>
        <fieldset className="form held" disabled={desk.locked}>
          <legend className="sr">Terms</legend>
          <div data-quote-field="title">
            <TextField
              label="Title, as the customer reads it"
              value={draft.title}
              maxLength={120}
              onChange={(title) => desk.edit({ do: 'title', title })}
            />
          </div>
          <div data-quote-field="standsUntil">
            <DateField
              label="Stands until"
              value={draft.standsUntil ?? ''}
              min={view.asOf}
              onChange={(date) => desk.edit({ do: 'stands_until', date: date === '' ? null : date })}
            />
          </div>
          <DocumentUnitsField />
          <TermsFields />
          <NoteField
            label="Note to the customer"
            required={false}
            rows={3}
            maxLength={2000}
            value={draft.note}
            onChange={(note) => desk.edit({ do: 'note', note })}
          />
        </fieldset>
        <p className="need-act">
          <Link to="/quotes/new" search={{ from: view.id }} className="btn small">
            Copy to a new quote
          </Link>
        </p>
      </section>
    </>
  )
}
