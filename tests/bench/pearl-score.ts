import type { TrueNote } from '../support/render.ts';
import type { LiveNote } from './live-follow.ts';

/** a pearl this near a struck one's moment, at its key, is that one's, seconds */
const SAME_SEC = 0.05;
/** what was struck so long ago may still be heard, seconds: not between attempts yet */
const PLAYING_SEC = 1;

export interface PearlScore {
  /** hammer → first pearl at its key; of those keys that ever had one */
  readonly delaysMs: readonly number[];
  /** keys whose pearl was settled there in the end; left open */
  readonly settled: number;
  readonly open: number;
  readonly guesses: number;
  /** guesses that were corrected to another key or withdrawn */
  readonly wrongAtFirst: number;
  /** pearls of keys that nobody struck, while somebody played: withdrawn; left open; settled */
  readonly passing: number;
  readonly opened: number;
  readonly standing: number;
  /** and while nobody did, of both kinds */
  readonly between: number;
}

/** Keys struck, and what the live ear told → how its pearls answer them. One pearl answers one key; a guess that was corrected, the last. */
export function scorePearls(struck: readonly TrueNote[], told: readonly LiveNote[]): PearlScore {
  const left = new Set(told);
  const delaysMs: number[] = [];
  let settled = 0;
  let open = 0;
  for (const { midi, timeSec } of struck) {
    const answers = (said: LiveNote['guess']): said is NonNullable<LiveNote['guess']> =>
      said !== null && said.midi === midi && Math.abs(said.timeSec - timeSec) < SAME_SEC;
    const one =
      [...left].find(({ final }) => answers(final)) ?? [...left].find(({ guess }) => answers(guess));
    if (one === undefined) continue;
    left.delete(one);
    settled += answers(one.final) ? 1 : 0;
    open += one.final === null && !one.isWithdrawn ? 1 : 0;
    delaysMs.push(1000 * ((answers(one.guess) ? one.guess : one.final)!.toldSec - timeSec));
  }
  const guesses = told.filter(({ guess }) => guess !== null);
  const isPlayed = ({ guess, final }: LiveNote): boolean => {
    const { timeSec } = (final ?? guess)!;
    return struck.some((note) => timeSec > note.timeSec - SAME_SEC && timeSec < note.timeSec + PLAYING_SEC);
  };
  const invented = [...left].filter(isPlayed);
  return {
    delaysMs,
    settled,
    open,
    guesses: guesses.length,
    wrongAtFirst: guesses.filter(
      ({ guess, final, isWithdrawn }) => isWithdrawn || (final !== null && final.midi !== guess!.midi),
    ).length,
    passing: invented.filter(({ isWithdrawn }) => isWithdrawn).length,
    opened: invented.filter(({ final, isWithdrawn }) => final === null && !isWithdrawn).length,
    standing: invented.filter(({ final }) => final !== null).length,
    between: left.size - invented.length,
  };
}
