import type { ButtonHTMLAttributes, ReactElement, ReactNode } from 'react'

interface Props extends Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'disabled'> {
  /** One "main" in a view; "plain" reads as a link. */
  look?: 'main' | 'outlined' | 'plain'
  small?: boolean
  /** Why it cannot be pressed now. It stays focusable and the reason stands beside it (ButtonReason). */
  off?: boolean
  /** Under way: pressing again does nothing. */
  busy?: boolean
  children: ReactNode
}

/** A button that says what will happen. Not available is said in words, never by a dead control. */
export function Button({
  look = 'outlined',
  small = false,
  off = false,
  busy = false,
  onClick,
  type = 'button',
  className = '',
  ...rest
}: Props): ReactElement {
  const classes = ['btn', look === 'outlined' ? '' : look, small ? 'small' : '', className].filter(Boolean).join(' ')
  return (
    <button
      {...rest}
      type={type}
      className={classes}
      aria-disabled={off || busy || undefined}
      data-busy={busy || undefined}
      onClick={(event) => {
        if (off || busy) return event.preventDefault()
        onClick?.(event)
      }}
    />
  )
}
