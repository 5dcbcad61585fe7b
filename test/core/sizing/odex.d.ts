declare module 'odex' {
  class Solver {
    constructor(equations: number)
    absoluteTolerance: number
    relativeTolerance: number
    solve(f: (x: number, y: number[]) => number[], x0: number, y0: number[], xEnd: number): { y: number[] }
  }
  const odex: { Solver: typeof Solver }
  export default odex
}
