export { apartDb, isSamePlace, mergeHands, nameOfLook, readLook, writeLook } from './alone.ts';
export type * from './types.ts';
import { median } from '../../base/statistics.ts';
import { levelsAreCut } from '../audio/index.ts';
import type { Heard, PlayedNote } from '../types.ts';
import { apart, join, learn } from './learnt.ts';
import { mergeHands } from './alone.ts';
import type { HandsAlone, KeyProfile, PianoProfile } from './types.ts';

/**
 * One strike's ±: of its pitch, cents; of its loudness among those of its attempt, dB (a player's own scatter and the ear's); of
 * log10 B (our bench, development piano).
 */
const EACH = { cents: 3, levelDb: 1.5, logStiffness: 0.15 } as const;
/** a note less certain than this teaches nothing */
const LEAST_CONFIDENCE = 0.8;
/** fewer notes than this do not speak for a piano */
const LEAST_NOTES = 3;
/** so many ± and cents apart, the piano has been tuned, or is another one */
const OTHER_APART = 4;
const OTHER_CENTS = 8;

/**
 * One listening → what it teaches of the piano; null where too little was heard, or its levels are cut. With it, another listening starts from the
 * piano's own tuning.
 * `alone`: what the attempt showed of a hand alone.
 *
 * @example
 * const { heard } = listenAndKeep(sound);
 * const again = assess(sound, null, { piano: learnPiano(heard) });
 */
export function learnPiano(
  heard: Pick<Heard, 'notes' | 'tuning' | 'findings'>,
  alone: HandsAlone = {},
): PianoProfile | null {
  const notes = heard.notes.filter(({ confidence }) => confidence >= LEAST_CONFIDENCE);
  if (notes.length < LEAST_NOTES || levelsAreCut(heard)) return null;
  const byKey = new Map<number, PlayedNote[]>();
  for (const note of notes) byKey.set(note.midi, [...(byKey.get(note.midi) ?? []), note]);
  return {
    version: 1,
    tuningCents: { value: heard.tuning.cents, plusMinus: heard.tuning.sdCents, count: notes.length },
    keys: Object.fromEntries([...byKey].map(([midi, strikes]) => [midi, keyOf(strikes)])),
    ...(Object.keys(alone).length > 0 && { alone }),
  };
}

function keyOf(strikes: readonly PlayedNote[]): KeyProfile {
  const read = strikes.flatMap(({ stiffness }) => (stiffness === undefined ? [] : [Math.log10(stiffness)]));
  const pitched = strikes.filter(({ stiffness }) => stiffness !== undefined);
  return {
    levelDb: learn(
      strikes.map(({ levelDb }) => levelDb),
      EACH.levelDb,
    ),
    ...(read.length === 0
      ? {}
      : {
          cents: learn(
            pitched.map(({ cents }) => cents),
            EACH.cents,
          ),
          logStiffness: learn(read, EACH.logStiffness),
        }),
  };
}

/**
 * What was known and what one more listening taught → what is known now. Each figure weighs by its certainty; levels are laid
 * over one another first, since every attempt is as loud as it was played and recorded. A tuning that lies further off than both could err says that the piano was tuned, or is another: then only the newer counts.
 */
export function mergePianos(older: PianoProfile | null, newer: PianoProfile): PianoProfile {
  if (older === null || isAnother(older, newer)) return newer;
  const offsetDb = louderBy(older, newer);
  const alone = mergeHands(older.alone ?? null, newer.alone ?? null);
  const settledCents = newer.settledCents ?? older.settledCents;
  const midis = [...new Set([...Object.keys(older.keys), ...Object.keys(newer.keys)].map(Number))];
  return {
    version: 1,
    tuningCents: join(older.tuningCents, newer.tuningCents),
    ...(settledCents !== undefined && { settledCents }),
    keys: Object.fromEntries(
      midis.map((midi) => [midi, joinKeys(older.keys[midi], softer(newer.keys[midi], offsetDb))] as const),
    ),
    ...(alone !== null && { alone }),
  };
}

/** How much louder the keys that both know were played, or recorded, this time, dB: a key's level is one among its neighbours'. */
function louderBy(older: PianoProfile, newer: PianoProfile): number {
  const apartDb = Object.entries(newer.keys).flatMap(([midi, { levelDb }]) => {
    const before = older.keys[Number(midi)];
    return before === undefined ? [] : [levelDb.value - before.levelDb.value];
  });
  return median(apartDb) ?? 0;
}

function softer(key: KeyProfile | undefined, byDb: number): KeyProfile | undefined {
  return key && { ...key, levelDb: { ...key.levelDb, value: key.levelDb.value - byDb } };
}

function isAnother(older: PianoProfile, newer: PianoProfile): boolean {
  const cents = Math.abs(older.tuningCents.value - newer.tuningCents.value);
  return cents > OTHER_CENTS && apart(older.tuningCents, newer.tuningCents) > OTHER_APART;
}

function joinKeys(older: KeyProfile | undefined, newer: KeyProfile | undefined): KeyProfile {
  if (older === undefined || newer === undefined) return (older ?? newer)!;
  const cents = older.cents && newer.cents ? join(older.cents, newer.cents) : (older.cents ?? newer.cents);
  const logStiffness =
    older.logStiffness && newer.logStiffness
      ? join(older.logStiffness, newer.logStiffness)
      : (older.logStiffness ?? newer.logStiffness);
  return {
    levelDb: join(older.levelDb, newer.levelDb),
    ...(cents === undefined ? {} : { cents }),
    ...(logStiffness === undefined ? {} : { logStiffness }),
  };
}
