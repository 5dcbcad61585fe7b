/** What a press is for: a label stands for its tick or its choice. What comes with a library of its own minds its presses itself. */
const PRESSED = ':is(button, a[href], label, summary):not([data-react-aria-pressable])'

interface Press {
  control: HTMLElement
  /** Where the control lay when it was pressed. */
  box: DOMRect
}

/** Whether the pointer is still where the control was: one that was drawn away before it was let go means "not after all". */
const within = ({ box }: Press, { clientX, clientY }: MouseEvent): boolean =>
  clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom

function findPress({ target }: MouseEvent): Press | null {
  const control = target instanceof Element ? target.closest<HTMLElement>(PRESSED) : null
  return control && { control, box: control.getBoundingClientRect() }
}

/** The browser gives the click of such a press to what holds both places; nobody meant that. */
function swallowClick(page: Document): void {
  const swallow = (event: MouseEvent): void => {
    if (!event.isTrusted) return
    event.stopPropagation()
    event.preventDefault()
  }
  page.addEventListener('click', swallow, { capture: true, once: true })
  // It comes in the same turn as the release, or not at all.
  setTimeout(() => page.removeEventListener('click', swallow, { capture: true }))
}

/**
 * A press that began on a control counts, though the control moved before it was let go. Leaving a field judges it: a fault's sentence comes or goes
 * between press and release, and what stands below moves from under the pointer. Mouse events are listened to, since a finger's tap is told by them too.
 */
export function keepPresses(page: Document): void {
  let press: Press | null = null
  page.addEventListener('mousedown', (event) => (press = event.button === 0 ? findPress(event) : null), { capture: true })
  page.addEventListener(
    'mouseup',
    (event) => {
      const begun = press
      press = null
      if (!begun || event.button !== 0 || !begun.control.isConnected || !within(begun, event)) return
      if (event.target instanceof Node && begun.control.contains(event.target)) return
      swallowClick(page)
      begun.control.click()
    },
    { capture: true },
  )
}
