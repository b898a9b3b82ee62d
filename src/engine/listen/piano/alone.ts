import { mean, median } from '../../base/statistics.ts';
import { decodeBase64, encodeBase64 } from '../../base/base64.ts';
import type { AloneLook, HandsAlone } from './types.ts';

/** frequencies at which a key is looked at, its own eight partials first (`recheck/look`) */
const STRIPS = 24;
/** looks kept of one name: a player strikes now louder, now softer, and a piano drifts */
const MOST_LOOKS = 3;
/** names kept, some 170 kB as JSON; the longest unheard go first */
const MOST_NAMES = 600;
/** Levels are kept from −2.5 to 2.5 in steps of 0.4 dB; a unit is 20 dB. */
const SPAN = { from: -2.5, steps: 255 / 5 } as const;
const DB = 20;
/** the key's own partials, first among the frequencies of a look, and the parts of time in which they are told apart by pitch */
const OWN_PARTIALS = [1, 2, 3, 4, 5, 6, 7, 8];
const SHARP_PARTS = 4;
/**
 * What one device hears of keys at one place lies nearer together than this, dB, loudness taken out. Development piano, 54 attempts
 * of both hands, the lower one known from another attempt of some 3 dB less: 0.7 to 2.7 at the same place (three above); 2.6 to
 * 5.4 elsewhere in the room, in other rooms and by a phone (none of 138 below).
 */
const MOVED_DB = 2.4;
/** fewer keys do not tell */
const LEAST_COMMON = 3;
/** partials nearer than this sound as one, semitones; those above are too weak to matter */
const ONE_PARTIAL = 0.5;
const HIGHEST_COVERING = 16;

/** Keys struck and the key looked at, by MIDI number → the name under which the look is kept. */
export function nameOfLook(struck: readonly number[], midi: number): string {
  return `${struck.toSorted((a, b) => a - b).join()}>${midi}`;
}

/** Levels → a look to be kept. */
export function writeLook(levels: Float32Array): AloneLook {
  const bytes = Uint8Array.from(levels, (level) =>
    Math.min(Math.max(Math.round((level - SPAN.from) * SPAN.steps), 0), 255),
  );
  return { seen: encodeBase64(bytes) };
}

/** A kept look → its levels. */
export function readLook({ seen }: AloneLook): Float32Array {
  return Float32Array.from(decodeBase64(seen), (byte) => byte / SPAN.steps + SPAN.from);
}

/** −55 dB: what is weaker may be noise */
const AUDIBLE = -0.75;
/** fewer places that both hear do not tell */
const LEAST_PLACES = 3;

/** One key as it is now and as it was alone; `others`: keys struck now that were not struck then. */
export interface SameKey {
  readonly midi: number;
  readonly others: readonly number[];
  readonly now: Float32Array;
  readonly before: Float32Array;
}

/**
 * How far one key's two looks lie apart, dB: the mean distance of their difference from its median, so that loudness does not
 * count, at its partials that none of the others covers; null where too few are heard in both.
 */
export function apartDb({ midi, others, now, before }: SameKey): number | null {
  const partials = OWN_PARTIALS.filter((partial) => !others.some((other) => isCovered(midi, partial, other)));
  const differences: number[] = [];
  for (let part = 0; part < SHARP_PARTS; part++) {
    for (const partial of partials) {
      const at = part * STRIPS + partial - 1;
      if (now[at]! > AUDIBLE && before[at]! > AUDIBLE) differences.push(now[at]! - before[at]!);
    }
  }
  if (differences.length < LEAST_PLACES) return null;
  const middle = median(differences)!;
  return DB * mean(differences.map((value) => Math.abs(value - middle)))!;
}

function isCovered(midi: number, partial: number, other: number): boolean {
  const place = midi - other + 12 * Math.log2(partial);
  const nearest = Math.round(2 ** (place / 12));
  return (
    nearest >= 1 && nearest <= HIGHEST_COVERING && Math.abs(place - 12 * Math.log2(nearest)) < ONE_PARTIAL
  );
}

/** Keys now and before → whether both were heard of one piano from one place; null: too few to tell. */
export function isSamePlace(keys: readonly SameKey[]): boolean | null {
  const apart = keys.flatMap((key) => apartDb(key) ?? []);
  return apart.length < LEAST_COMMON ? null : mean(apart)! <= MOVED_DB;
}

/** What was known of hands alone and what is new → what is known now: of another place or piano only what is new. */
export function mergeHands(older: HandsAlone | null, newer: HandsAlone | null): HandsAlone | null {
  if (older === null || newer === null) return older ?? newer;
  return isSamePlace(sameKeys(older, newer)) === false ? newer : joinAlone(older, newer);
}

/** Keys struck in both, seen at themselves. */
function sameKeys(older: HandsAlone, newer: HandsAlone): readonly SameKey[] {
  return Object.entries(newer).flatMap(([name, [now]]) => {
    const before = older[name]?.[0];
    const [struck, midi] = name.split('>') as [string, string];
    return before === undefined || now === undefined || !struck.split(',').includes(midi)
      ? []
      : [{ midi: Number(midi), others: [], now: readLook(now), before: readLook(before) }];
  });
}

/** What was known and what is new, the newest first. */
function joinAlone(older: HandsAlone, newer: HandsAlone): HandsAlone {
  const fresh = Object.entries(newer).map(
    ([name, looks]) => [name, [...looks, ...(older[name] ?? [])].slice(0, MOST_LOOKS)] as const,
  );
  const rest = Object.entries(older).filter(([name]) => newer[name] === undefined);
  return Object.fromEntries([...fresh, ...rest].slice(0, MOST_NAMES));
}
