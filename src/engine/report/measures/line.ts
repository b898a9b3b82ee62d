/** A straight line y = intercept + slope · x and the SD of its slope from the scatter about it. */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly slopeSd: number;
  readonly residuals: readonly number[];
}

/** Least squares through at least three points that do not share one x; undefined otherwise. */
export function lineThrough(x: readonly number[], y: readonly number[]): Line | undefined {
  const count = x.length;
  if (count < 3) return undefined;
  const meanX = x.reduce((sum, value) => sum + value, 0) / count;
  const meanY = y.reduce((sum, value) => sum + value, 0) / count;
  const sumXX = x.reduce((sum, value) => sum + (value - meanX) ** 2, 0);
  if (sumXX === 0) return undefined;
  const slope = x.reduce((sum, value, index) => sum + (value - meanX) * (y[index]! - meanY), 0) / sumXX;
  const intercept = meanY - slope * meanX;
  const residuals = y.map((value, index) => value - intercept - slope * x[index]!);
  const scatter = residuals.reduce((sum, value) => sum + value * value, 0) / (count - 2);
  return { intercept, slope, slopeSd: Math.sqrt(scatter / sumXX), residuals };
}
