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
/**
 * What one device hears of a key at one place lies nearer together than this, dB, its loudness taken out. Sampled pianos, arpeggios
 * rendered in four homes: 1.0 to 2.0 in the same one, louder and softer, 3.9 to 5.2 in another.
 */
const MOVED_DB = 3;
/** Among the levels, where the string's own odd partials lie while it sounds: a string an octave above has no part in them. */
const ODD_PARTIALS = [0, 1, 2].flatMap((part) => [0, 2, 4, 6].map((partial) => part * STRIPS + partial));
/** fewer names in common do not tell */
const LEAST_COMMON = 3;

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

/**
 * How far two looks lie apart, dB: the mean distance of their difference from its median, so that loudness does not count.
 * `at`: places among the levels; null where too few are heard in both.
 */
export function apartDb(one: Float32Array, other: Float32Array, at?: readonly number[]): number | null {
  const places = at ?? Array.from(one, (_, index) => index);
  const differences = places.flatMap((index) =>
    one[index]! > AUDIBLE && other[index]! > AUDIBLE ? [one[index]! - other[index]!] : [],
  );
  if (differences.length < LEAST_PLACES) return null;
  const middle = median(differences)!;
  return DB * mean(differences.map((value) => Math.abs(value - middle)))!;
}

/** Keys as they are now and as they were alone, by their levels → heard from another place, or on another piano? */
export function isElsewhere(
  pairs: readonly { readonly now: Float32Array; readonly before: Float32Array }[],
): boolean {
  const apart = pairs.flatMap(({ now, before }) => apartDb(now, before, ODD_PARTIALS) ?? []);
  return apart.length >= LEAST_COMMON && median(apart)! > MOVED_DB;
}

/** The same keys struck, seen from another place or on another piano? */
export function isMoved(older: HandsAlone, newer: HandsAlone): boolean {
  return isElsewhere(
    Object.entries(newer).flatMap(([name, [now]]) => {
      const before = older[name]?.[0];
      const [struck, midi] = name.split('>') as [string, string];
      return before === undefined || now === undefined || !struck.split(',').includes(midi)
        ? []
        : [{ now: readLook(now), before: readLook(before) }];
    }),
  );
}

/** What was known and what is new, the newest first. */
export function joinAlone(older: HandsAlone, newer: HandsAlone): HandsAlone {
  const fresh = Object.entries(newer).map(
    ([name, looks]) => [name, [...looks, ...(older[name] ?? [])].slice(0, MOST_LOOKS)] as const,
  );
  const rest = Object.entries(older).filter(([name]) => newer[name] === undefined);
  return Object.fromEntries([...fresh, ...rest].slice(0, MOST_NAMES));
}
