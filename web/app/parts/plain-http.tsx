import type { ReactElement } from 'react'
import { Told } from './told.tsx'

const LOOPBACK = new Set(['localhost', '127.0.0.1', '[::1]'])

/** True where the page came over plain http from another computer: everything on the way can read it. */
export const isPlainHttp = ({ protocol, hostname }: Pick<Location, 'protocol' | 'hostname'>): boolean =>
  protocol === 'http:' && !LOOPBACK.has(hostname) && !hostname.endsWith('.localhost')

/** Names what is off on an address without TLS, and whom to tell. */
export function PlainHttpBanner(): ReactElement | null {
  if (!isPlainHttp(window.location)) return null
  return (
    <aside aria-label="Safety of this address">
      <Told kind="warn" title="This address is not safe">
        <p>
          It begins with http:// and not https://. Signing in, the camera, working without signal and printed links are off here. Whoever
          runs this place sets PUBLIC_URL and a certificate: docs/expose.md of the program says how.
        </p>
      </Told>
    </aside>
  )
}
