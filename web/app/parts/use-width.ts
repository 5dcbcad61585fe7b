import { useLayoutEffect, useState, type RefObject } from 'react'

/** The width of an element in whole px, kept current; 0 until it is laid out. */
export function useWidth(place: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const element = place.current
    if (!element) return
    const measure = (): void => setWidth(Math.floor(element.clientWidth))
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [place])
  return width
}
