/**
 * Pseudo-random numbers from a seed, the same everywhere: sfc32 (a small counting generator, passes the usual batteries
 * of tests). For simulation only.
 *
 * @returns a function that gives the next number, 0 ≤ x < 1
 */
export function randomNumbers(seed: number): () => number {
  let a = 0x9e3779b9 ^ seed;
  let b = 0x243f6a88;
  let c = 0xb7e15162 ^ seed;
  let counter = 1;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4_294_967_296;
  };
  // the first numbers still show the seed
  for (let warm = 0; warm < 15; warm += 1) next();
  return next;
}

/** Standard normal numbers by the polar method. */
export function standardNormals(uniform: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square === 0 || square >= 1) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      return x * scale;
    }
  };
}
