import type { SettledPiano, Student } from './types.ts';

type Pianos = Pick<Student, 'piano' | 'elsewhere'>;

/** Tunings so near are of one piano, cents: it moves with the damp, and a reading strays (`KNOWN_SD_CENTS` in engine/match/recognise). */
export const NEAR_CENTS = 10;
/** A student does not play at more places; the longest unheard of goes. */
const MOST = 4;

/** The pianos of a student that a correction settled, the newest first. */
export function pianosOf({ piano, elsewhere = [] }: Pianos): readonly SettledPiano[] {
  return [...(piano ? [piano] : []), ...elsewhere];
}

/** … as they are kept; of two so near only the first. */
export function asPianos(all: readonly SettledPiano[]): Required<Pianos> {
  const [first, ...others] = all
    .filter((one, at) => !all.slice(0, at).some((before) => Math.abs(before.cents - one.cents) <= NEAR_CENTS))
    .slice(0, MOST);
  return { piano: first ?? null, elsewhere: others };
}

/** Of two records of one student put together: what is settled in either. */
export function pianosOfBoth(one: Pianos, other: Pianos): Partial<Pianos> {
  const all = [...pianosOf(one), ...pianosOf(other)];
  return all.length === 0 ? {} : asPianos(all);
}
