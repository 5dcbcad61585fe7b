import { useEffect, useId, useRef, type ReactElement, type ReactNode } from 'react'

interface Props {
  open: boolean
  /** The question. */
  title: string
  children: ReactNode
  /** Buttons that are verbs, the safe one first. */
  actions: ReactNode
  onClose: () => void
}

/** Only to destroy, to issue, or to choose from very many. The browser's own modal: focus stays in it and returns, Escape closes it. */
export function Dialog({ open, title, children, actions, onClose }: Props): ReactElement {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const element = dialog.current
    if (!element) return
    if (open && !element.open) element.showModal()
    if (!open && element.open) element.close()
  }, [open])
  return (
    <dialog ref={dialog} aria-labelledby={id} onClose={onClose}>
      {open && (
        <div className="body">
          <h2 id={id}>{title}</h2>
          {children}
          <div className="acts">{actions}</div>
        </div>
      )}
    </dialog>
  )
}
