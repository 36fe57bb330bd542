declare module 'quadprog' {
  /** The part of quadprog 1.6.1 used as a reference; arrays begin at index 1, their first entries are not read. */
  interface Quadprog {
    /** Least ½·xᵀ·D·x − dᵀ·x where Aᵀ·x ≥ b; the message is empty if there is one. */
    solveQP(
      D: number[][],
      d: number[],
      A: number[][],
      b: number[],
    ): { readonly solution: number[]; readonly message: string };
  }
  const quadprog: Quadprog;

  export = quadprog;
}
