import fc from 'fast-check'

/** Whoever draws here draws little and always the same: a mutant must not live or die by the luck of a draw, and there are thousands of them. */
fc.configureGlobal({ seed: 1, numRuns: 3 })
