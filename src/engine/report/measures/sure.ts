import { DEFAULT_CRITERIA } from '../criteria/index.ts';
import type { Criteria } from '../criteria/index.ts';
import { isMeasured } from './estimate.ts';
import type { Estimate, Figure } from '../types.ts';

/** Standard normal distribution up to `z`, to 1.5e-7 (Abramowitz & Stegun 1964, 7.1.26; memory). */
export function normalShare(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const tail =
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) *
    t *
    Math.exp(-x * x);
  return z < 0 ? tail / 2 : 1 - tail / 2;
}

/** How sure it is that the truth behind a figure lies over a bound, by the figure's ±; 0 where it was not measured. */
export function shareOver(figure: Figure, bound: number): number {
  if (!isMeasured(figure)) return 0;
  const { value, plusMinus = 0 } = figure;
  if (plusMinus === 0) return value > bound ? 1 : 0;
  return normalShare((value - bound) / plusMinus);
}

/**
 * The same where the ± is itself reckoned from the scatter of a few values: Student's distribution with that freedom, brought to the
 * normal one (Wallace 1959, from memory; within 0.002 of printed tables from 3 degrees on).
 */
export function shareOverByFew(figure: Figure, bound: number, freedom: number): number {
  if (!isMeasured(figure) || freedom < 1) return 0;
  const { value, plusMinus = 0 } = figure;
  if (plusMinus === 0) return value > bound ? 1 : 0;
  const t = (value - bound) / plusMinus;
  const narrower = (8 * freedom + 1) / (8 * freedom + 3);
  return normalShare(Math.sign(t) * narrower * Math.sqrt(freedom * Math.log(1 + t ** 2 / freedom)));
}

/** The ear's error of one onset is mostly small and now and then large: so much of the time so many times its SD, else so many (kurtosis 13). */
const LARGE = { share: 0.1, sds: 2.5, otherwise: 0.6 } as const;

/** The same for what a single onset decides: a normal distribution has errors of four SD a hundred times too rarely. */
export function shareOverByOnset({ value, plusMinus = 0 }: Estimate, bound: number): number {
  const by = (sds: number): number => shareOver({ value, plusMinus: sds * plusMinus }, bound);
  return LARGE.share * by(LARGE.sds) + (1 - LARGE.share) * by(LARGE.otherwise);
}

/** The worst of several (`looks`) lies over a bound by chance so many times more often, and must be the surer (Bonferroni). */
export function sureOf(looks: number, { sure }: Criteria): number {
  return 1 - (1 - sure) / Math.max(1, looks);
}

/** Whether a figure, the worst of so many, lies over a bound surely enough to be said. */
export function surelyOver(figure: Figure, bound: number, criteria: Criteria, looks = 1): boolean {
  return shareOver(figure, bound) >= sureOf(looks, criteria);
}

/** On which side of nought a figure surely lies: 1 over it, −1 under it; 0: it may be either. */
export function sideOf({ value, plusMinus = 0 }: Estimate): 1 | -1 | 0 {
  if (Math.abs(value) <= DEFAULT_CRITERIA.sureBy * plusMinus) return 0;
  return value > 0 ? 1 : -1;
}

export function valueOf(figure: Figure): number | undefined {
  return isMeasured(figure) ? figure.value : undefined;
}
