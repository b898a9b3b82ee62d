import { logOddsOf, probabilityOf } from '../../base/odds.ts';
import { median } from '../../base/statistics.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { OnsetCandidate } from './onset-candidate.ts';

/** What a strike is judged by. */
export type Judged = Pick<
  OnsetCandidate,
  'onsetSample' | 'midi' | 'probability' | 'loudness' | 'sounding' | 'flatness' | 'agreement'
>;

/** A strike and the chance that a key was struck there. */
export interface Settled {
  readonly strike: OnsetCandidate;
  readonly chance: number;
}

/**
 * Evidence by name → its weight in the log odds: a logistic model fitted to strikes of two hundred rendered attempts of one hand, half of
 * them hard, on the development piano and Iowa's (`npm run bench:settle` fits the like anew); of the weights that fit about as well those
 * with which both hands are judged best. `noisy` as well as it can be told: of doubtful strikes in speech, knocks, claps, dishes, pages and hiss.
 */
export const SETTLE_WEIGHTS = {
  belief: 2.55,
  softer: 3,
  sounding: 1.45,
  harmonic: -0.75,
  far: -1.25,
  agreement: 0.4,
  noisy: -12,
  bias: -1.25,
} as const;

export type Evidence = Readonly<Record<Exclude<keyof typeof SETTLE_WEIGHTS, 'bias'>, number>>;

/** notes within this are one moment, samples */
const TOGETHER = 0.04 * RATE_HZ;
/** loudness and register are judged against likely notes this near, samples */
// The weights were fitted with half of this; three seconds keep a voice after the playing from being judged alone.
const NEAR = 3 * RATE_HZ;
const LIKELY = 0.5;
/** A belief beyond this says no more: with all of it said, chances of two pianos' attempts were half as likely. */
const MOST_BELIEVED = 0.95;
/** partials 2, 3, 4, 5, 6, 7 and 8 over the first, semitones: there a string sounds like a key that was not struck */
const GHOSTS = [12, 19, 24, 28, 31, 34, 36];
/** keys this near the middle of what is played are in reach */
const IN_REACH = 14;

/** All that may have been struck → what was struck, each judged among its neighbours. In order of time, then key. */
export function settle(strikes: readonly OnsetCandidate[]): Settled[] {
  return weigh(strikes).filter(({ chance }) => chance > 0.5);
}

/** The same for all that may have been struck, however small its chance. */
export function weigh(strikes: readonly OnsetCandidate[]): Settled[] {
  const settled = weighable(strikes).map(({ strike, evidence }) => ({ strike, chance: chanceOf(evidence) }));
  return settled.sort((a, b) => a.strike.onsetSample - b.strike.onsetSample || a.strike.midi - b.strike.midi);
}

/** Each strike with what speaks for and against it among its neighbours; in the order in which they came. */
export function weighable(
  strikes: readonly OnsetCandidate[],
): { readonly strike: OnsetCandidate; readonly evidence: Evidence }[] {
  let from = 0;
  let to = 0;
  return strikes.map((strike) => {
    while (strikes[from]!.onsetSample < strike.onsetSample - NEAR) from += 1;
    while (to < strikes.length && strikes[to]!.onsetSample <= strike.onsetSample + NEAR) to += 1;
    return { strike, evidence: evidenceFor(strike, strikes.slice(from, to)) };
  });
}

/** One strike among those around it (itself may be among them) → evidence, each kind bounded. */
export function evidenceFor(strike: Judged, around: readonly Judged[]): Evidence {
  const others = around.filter((other) => other !== strike);
  const likely = others.filter(({ probability }) => probability > LIKELY);
  const surer = others.filter(
    (other) =>
      other.probability > strike.probability && Math.abs(other.onsetSample - strike.onsetSample) < TOGETHER,
  );
  const harmonic = surer.some((other) => GHOSTS.includes(strike.midi - other.midi));
  const loudest = Math.max(strike.loudness, ...likely.map(({ loudness }) => loudness));
  const keys = [...likely, strike].map(({ midi }) => midi).sort((a, b) => a - b);
  const middle = keys[keys.length >> 1]!;
  const belief = Math.min(Math.max(strike.probability, 1e-4), MOST_BELIEVED);
  return {
    belief: logOddsOf(belief),
    softer: Math.max(-5, (strike.loudness - loudest) / 6),
    sounding: strike.sounding,
    harmonic: harmonic ? 1 : 0,
    far: Math.max(0, Math.abs(strike.midi - middle) - IN_REACH) / 12,
    agreement: strike.agreement ?? 0,
    noisy: strike.agreement === null ? 0 : Math.max(0, strike.flatness - flatnessOfSure(others)),
  };
}

/** The middle flatness of what was surely struck, or a tone's where nothing was: a hissing recording is no evidence against any note. */
function flatnessOfSure(strikes: readonly Judged[]): number {
  return median(strikes.filter(({ agreement }) => agreement === null).map(({ flatness }) => flatness)) ?? 0;
}

/** The chance that a key was struck, judged by those around it in time (itself may be among them). */
export function chanceAmong(strike: Judged, around: readonly Judged[]): number {
  return chanceOf(evidenceFor(strike, around));
}

function chanceOf(evidence: Evidence): number {
  const kinds = Object.keys(evidence) as (keyof Evidence)[];
  const logOdds = kinds.reduce<number>(
    (sum, kind) => sum + SETTLE_WEIGHTS[kind] * evidence[kind],
    SETTLE_WEIGHTS.bias,
  );
  return probabilityOf(logOdds);
}
