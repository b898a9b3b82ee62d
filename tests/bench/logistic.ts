/** A logistic model by Newton's method: the weights that make what was seen likeliest (Hosmer & Lemeshow, Applied Logistic Regression). */

export interface Seen {
  /** one value a weight; the last one may be 1 throughout, for a bias */
  readonly values: readonly number[];
  /** log odds that are known of it otherwise */
  readonly known: number;
  readonly isTrue: boolean;
}

const MOST_ROUNDS = 60;
const ENOUGH = 1e-7;
/** keeps weights that nothing speaks of at 0 */
const RIDGE = 1e-3;

export function logOddsOf(weights: readonly number[], { values, known }: Seen): number {
  return values.reduce((sum, value, i) => sum + value * weights[i]!, known);
}

/** → one weight a value. */
export function fitLogistic(seen: readonly Seen[], size: number): readonly number[] {
  let weights: readonly number[] = new Array<number>(size).fill(0);
  let loss = lossOf(weights, seen);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const slope = weights.map((weight) => RIDGE * weight);
    const curve = weights.map((_, i) => weights.map((__, j) => (i === j ? RIDGE : 0)));
    for (const one of seen) {
      const chance = 1 / (1 + Math.exp(-logOddsOf(weights, one)));
      one.values.forEach((value, i) => {
        slope[i]! += value * (chance - (one.isTrue ? 1 : 0));
        one.values.forEach((other, j) => (curve[i]![j]! += value * other * chance * (1 - chance)));
      });
    }
    const step = solve(curve, slope);
    let share = 1;
    let next = weights;
    for (; share > ENOUGH; share /= 2) {
      next = weights.map((weight, i) => weight - share * step[i]!);
      if (lossOf(next, seen) <= loss) break;
    }
    weights = next;
    loss = lossOf(weights, seen);
    if (share * Math.max(...step.map(Math.abs)) < ENOUGH) break;
  }
  return weights;
}

function lossOf(weights: readonly number[], seen: readonly Seen[]): number {
  const ridge = weights.reduce((sum, weight) => sum + (RIDGE / 2) * weight ** 2, 0);
  return seen.reduce((sum, one) => {
    const logOdds = logOddsOf(weights, one);
    return sum + Math.max(logOdds, 0) - (one.isTrue ? logOdds : 0) + Math.log1p(Math.exp(-Math.abs(logOdds)));
  }, ridge);
}

/** A symmetric positive matrix and a right side → x, by elimination. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  rows.forEach((pivot, i) => {
    rows.forEach((row, j) => {
      if (i === j) return;
      const factor = row[i]! / pivot[i]!;
      row.forEach((_, k) => (row[k]! -= factor * pivot[k]!));
    });
  });
  return rows.map((row, i) => row.at(-1)! / row[i]!);
}
