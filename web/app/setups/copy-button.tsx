import { useState, type ReactElement } from 'react'
import { Button } from '../parts/button.tsx'

/** Copies a text and says so; where the browser does not let it, it says that. */
export function CopyButton({ text, what }: { text: string; what: string }): ReactElement {
  const [said, setSaid] = useState('')
  const copy = (): void => {
    navigator.clipboard.writeText(text).then(
      () => setSaid('Copied.'),
      () => setSaid('This browser does not let pages copy: open it and copy its address.'),
    )
  }
  return (
    <>
      <Button small onClick={copy}>
        Copy<span className="sr"> {what}</span>
      </Button>
      <output className="reason">{said}</output>
    </>
  )
}
