import type { ReactElement } from 'react'

/** The small drawings that stand beside a word. None carries meaning alone, so none is read out. */
const Sign = ({ box, className, children }: { box: string; className?: string; children: ReactElement | ReactElement[] }): ReactElement => (
  <svg viewBox={box} className={className} aria-hidden="true" focusable="false">
    {children}
  </svg>
)

export const MarkSign = (): ReactElement => (
  <Sign box="0 0 30 22">
    <path d="M1 4h6c6 0 4 11 9 11s4-8 8-8h5" fill="none" stroke="currentColor" strokeWidth="2.4" strokeLinecap="square" />
    <path d="M16 17.2c1 1.3 1.7 2.1 1.7 3a1.7 1.7 0 0 1-3.4 0c0-.9.7-1.7 1.7-3z" fill="currentColor" />
  </Sign>
)
export const DipSign = (): ReactElement => (
  <Sign box="0 0 14 10">
    <path d="M.5 2h4.2v6h4.6V2h4.2" fill="none" stroke="currentColor" strokeWidth="1.7" />
  </Sign>
)
export const BackSign = (): ReactElement => (
  <Sign box="0 0 20 20" className="sign-back">
    <path d="M12.5 3.5L6 10l6.5 6.5" fill="none" stroke="currentColor" strokeWidth="2" />
  </Sign>
)
export const DownSign = (): ReactElement => (
  <Sign box="0 0 12 8">
    <path d="M1.5 1.5L6 6l4.5-4.5" fill="none" stroke="currentColor" strokeWidth="1.8" />
  </Sign>
)
export const NoSignalSign = (): ReactElement => (
  <Sign box="0 0 20 16" className="sign-signal">
    <path d="M2.5 14.5v-3M7.5 14.5v-6M12.5 14.5V5M17.5 14.5v-13" stroke="currentColor" strokeWidth="1.6" strokeDasharray="1.8 1.5" />
  </Sign>
)
export const TierSign = ({ tier }: { tier: 'full' | 'today' | 'byDate' | 'best' }): ReactElement => (
  <Sign box="0 0 16 16" className="tier-mark">
    {tier === 'full' ? (
      <path d="M1 2.5h14M8 3v12" stroke="currentColor" strokeWidth="1.6" />
    ) : tier === 'today' ? (
      <path d="M1 10h14v2H1zM3.6 2.5h8.8L8 9.2z" fill="currentColor" />
    ) : tier === 'byDate' ? (
      <path d="M1 11h3M6.5 11h3M12 11h3M4.2 3h7.6L8 8.8z" fill="none" stroke="currentColor" strokeWidth="1.5" />
    ) : (
      <path d="M1 13.5h14M8 1v10M5.2 8.6L8 11.6l2.8-3" fill="none" stroke="currentColor" strokeWidth="1.5" />
    )}
  </Sign>
)
