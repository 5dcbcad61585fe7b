import { useRef, useState, type ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { isThisComputer } from './this-computer.ts'

/** A link to hand over: shown whole, copied with one press. */
export function CopyLink({ label, address }: { label: string; address: string }): ReactElement {
  const input = useRef<HTMLInputElement>(null)
  const [copied, setCopied] = useState<'no' | 'yes' | 'by_hand'>('no')
  const copy = async (): Promise<void> => {
    input.current?.select()
    try {
      await navigator.clipboard.writeText(address)
      setCopied('yes')
    } catch {
      setCopied('by_hand')
    }
  }
  const said = copied === 'yes' ? 'Copied.' : copied === 'by_hand' ? 'Marked: copy it with the keyboard.' : ''
  return (
    <div className="copy-link">
      <Field label={label} help={isThisComputer(address) ? 'This computer only: set the public address before giving it out.' : undefined}>
        {({ id, describedBy }) => (
          <div className="entry">
            <input id={id} ref={input} readOnly value={address} aria-describedby={describedBy} onFocus={(event) => event.target.select()} />
          </div>
        )}
      </Field>
      <div className="acts">
        <Button small onClick={() => void copy()}>
          Copy<span className="sr"> {label}</span>
        </Button>
        <a className="btn small" href={address} target="_blank" rel="noreferrer">
          Open<span className="sr"> {label}</span>
        </a>
        <output className="reason">{said}</output>
      </div>
    </div>
  )
}
