/** The package ships its source as its types, which does not compile under our settings; this is what the tests use of it. */
declare class Solver {
  constructor(dimension: number)
  absoluteTolerance: number
  relativeTolerance: number
  solve(derivative: (x: number, y: number[]) => number[], x0: number, y0: number[], xEnd: number): { y: number[] }
}
declare const odex: { Solver: typeof Solver }
export default odex
