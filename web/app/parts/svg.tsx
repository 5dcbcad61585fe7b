import { useLayoutEffect, useRef, type ReactElement } from 'react'
import { isDrawing } from './is-drawing.ts'

interface MarkupPolicy {
  createHTML(markup: string): string
}
interface PolicyFactory {
  createPolicy(name: string, rules: MarkupPolicy): MarkupPolicy
}

/** The one name that the content security policy lets in (`trusted-types driploop-plots`). */
const POLICY_NAME = 'driploop-plots'
const factory = (globalThis as { trustedTypes?: PolicyFactory }).trustedTypes
/** Only drawings pass: a string that is not one SVG element is refused, so that user text can never arrive here as markup by mistake. */
const rules: MarkupPolicy = {
  createHTML(markup) {
    if (!isDrawing(markup)) throw new TypeError('Only drawings may be placed as markup')
    return markup
  },
}
const policy = factory ? factory.createPolicy(POLICY_NAME, rules) : rules

/** Puts a drawing into its place; one that is refused leaves a line of text there, and the page as it is. */
function draw(place: HTMLElement, markup: string): void {
  try {
    place.innerHTML = policy.createHTML(markup)
  } catch {
    place.textContent = markup === '' ? '' : 'This drawing cannot be shown.'
  }
}

/** Places a drawing of web/plots into the page. No other component may set markup. */
export function Svg({ markup, className, inline = false }: { markup: string; className?: string; inline?: boolean }): ReactElement {
  const place = useRef<HTMLElement>(null)
  useLayoutEffect(() => {
    if (place.current) draw(place.current, markup)
  }, [markup])
  const set = (element: HTMLElement | null): void => {
    place.current = element
  }
  return inline ? <span ref={set} className={className} /> : <div ref={set} className={className} />
}
