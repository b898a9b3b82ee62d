/** Arithmetic mean; undefined of nothing. */
export function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Sample standard deviation (n − 1); undefined of fewer than two. */
export function standardDeviation(values: readonly number[]): number | undefined {
  const centre = mean(values);
  if (centre === undefined || values.length < 2) return undefined;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}

/** Quantile by linear interpolation between order statistics, `share` in 0..1; undefined of nothing. */
export function quantile(values: readonly number[], share: number): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = [...values].sort((a, b) => a - b);
  const position = Math.min(Math.max(share, 0), 1) * (sorted.length - 1);
  const below = Math.floor(position);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (position - below);
}

/** Middle value; undefined of nothing. */
export function median(values: readonly number[]): number | undefined {
  return quantile(values, 0.5);
}

/**
 * Middle of a scatter: the median of the means of all pairs, each value with itself too (Hodges & Lehmann 1963). As deaf to a stray
 * value as nearly a third of them being so, and on normal ones almost as sure as the mean: its variance is π/3 times that, a median's
 * π/2. Undefined of nothing.
 */
export function middle(values: readonly number[]): number | undefined {
  return median(values.flatMap((value, at) => values.slice(at).map((other) => (value + other) / 2)));
}

/** Height of a normal distribution at a value, up to the factor 1/√(2π), which falls out of every ratio. */
export function densityOf(
  value: number,
  { mean: centre, sd }: { readonly mean: number; readonly sd: number },
): number {
  return Math.exp(-0.5 * ((value - centre) / sd) ** 2) / sd;
}

/** Largest absolute value from one index to before another; 0 of none. */
export function peakOf(values: Float64Array, from: number, to: number): number {
  let peak = 0;
  for (let i = from; i < to; i++) peak = Math.max(peak, Math.abs(values[i]!));
  return peak;
}
