/** Uniform numbers strictly between 0 and 1 from a seed (Park & Miller's generator), for simulations that repeat. */
export function seededUniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
