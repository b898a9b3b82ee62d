import { mean } from '../../base/statistics.ts';
import { midiToHz } from '../../base/units.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { KeptSound, PlayedNote } from '../types.ts';
import { partialRatio, typicalStiffness } from './stiffness.ts';

/** one look at a partial, samples (93 ms), every so many seconds */
const WINDOW = 2048;
const HALF_SEC = WINDOW / 2 / RATE_HZ;
const EVERY_SEC = 0.1;
/** the loudest partials of the first six, if no later note sounds within this of one of its own first twelve, Hz */
const ASKED = 3;
const OF_FIRST = 6;
const OTHERS_FIRST = 12;
const APART_HZ = 32;
const HIGHEST_HZ = 4000;
/** strings above ring too short to tell (and the topmost have no dampers) */
const HIGHEST_MIDI = 84;
/** what is struck so soon after a note is struck with it, and let go with it, s */
const TOGETHER_SEC = 0.06;
/** A chord that is rolled, or not struck as one, has its keys no further apart than this, s: all of it is held until the next strike. */
const ONE_STRIKE_SEC = 0.12;
/** the slowest damper, and a key let go somewhat after the next was struck, s; looked at until so long after that */
const DAMPED_BY_SEC = 0.4;
const UNTIL_SEC = 1.1;
/** so soon after its onset a tone is at its loudest, s */
const LOUDEST_SEC = [0.06, 0.1] as const;

/**
 * A string rings on that has lost less than this, and so much more a second and for each octave above C4, dB. With the pedal held a
 * string of the development piano loses 5.6 + 9.7 a second + 5.1 an octave (SD 5; 48 attempts), without it 28 and more (SD 10; 48
 * attempts, rooms to 0.6 s, dampers of half to twice the usual time, keys held to 0.3 s over the next): `bench:pedal`.
 */
const LOST_DB = 15;
const LOST_DB_PER_SEC = 9.7;
const LOST_DB_PER_OCTAVE = 5.1;
const C4 = 60;
/** Of an attempt's strings so many seem to ring on where no pedal is held, a tenth on average and here taken twice … */
const BY_CHANCE = 0.2;
/** … and that it was chance must be less likely than this. */
const CHANCE = 0.01;
/** With the pedal held hardly any damping is heard: at most in this share of the notes. */
const DAMPINGS_HEARD = 0.5;

/**
 * Notes of one attempt in order of time, their sound and the piano's own tuning in cents → whether the pedal was held throughout:
 * strings ring on at their own pace long after their keys must have been let go, nearly all of them, and no dampings are heard. What
 * is not sure is not said: false also where fewer than three strings can be heard by themselves, as in short triads, where the next
 * chord strikes the same keys again.
 */
export function pedalHeld(notes: readonly PlayedNote[], sound: KeptSound, tuningCents: number): boolean {
  const heard = notes.filter(({ releaseSec }) => releaseSec !== null).length;
  if (heard > DAMPINGS_HEARD * notes.length) return false;
  const asked = notes.flatMap((note) => ringsOn(note, notes, sound, tuningCents) ?? []);
  const ringing = asked.filter((rings) => rings).length;
  return asked.length > 0 && chanceOfAtLeast(ringing, asked.length) < CHANCE;
}

/** A partial by itself: where, how loud at its onset, dB, and when it is looked at again, s. */
interface Alone {
  readonly freqHz: number;
  readonly loudDb: number;
  readonly toSec: number;
}

/** Whether a string still rings when its key has been let go; undefined: it cannot be heard by itself. */
function ringsOn(
  note: PlayedNote,
  notes: readonly PlayedNote[],
  sound: KeptSound,
  tuningCents: number,
): boolean | undefined {
  const { midi, timeSec } = note;
  const later = notes.filter((other) => other.timeSec > timeSec + TOGETHER_SEC);
  const nextSec = nextStrikeSec(timeSec, notes);
  if (midi > HIGHEST_MIDI || nextSec === undefined) return undefined;
  const fromSec = nextSec + DAMPED_BY_SEC;
  const lastSec = Math.min(fromSec + UNTIL_SEC - DAMPED_BY_SEC, sound.samples.length / RATE_HZ - HALF_SEC);
  // What was struck before or with it is let go by then as well; only what comes later hides it.
  const alone = partialsOf(note, OF_FIRST, tuningCents).flatMap((freqHz): Alone[] => {
    const hiddenSec = Math.min(
      ...later.flatMap((other) => (soundsAt(other, freqHz, tuningCents) ? [other.timeSec] : [])),
    );
    const toSec = Math.min(lastSec, hiddenSec - 2 * HALF_SEC);
    if (freqHz >= HIGHEST_HZ || toSec < fromSec) return [];
    const loudDb = Math.max(...LOUDEST_SEC.map((sec) => levelDb(sound, freqHz, timeSec + sec)));
    return [{ freqHz, loudDb, toSec }];
  });
  const asked = [...alone].sort((a, b) => b.loudDb - a.loudDb).slice(0, ASKED);
  if (asked.length === 0) return undefined;
  const left = asked.map(({ freqHz, toSec }) => {
    const looks = Math.floor((toSec - fromSec) / EVERY_SEC) + 1;
    return mean(Array.from({ length: looks }, (_, at) => levelDb(sound, freqHz, fromSec + at * EVERY_SEC)))!;
  });
  const afterSec = mean(asked.map(({ toSec }) => (fromSec + toSec) / 2 - timeSec))!;
  const lostDb = togetherDb(asked.map(({ loudDb }) => loudDb)) - togetherDb(left);
  return lostDb < LOST_DB + LOST_DB_PER_SEC * afterSec + (LOST_DB_PER_OCTAVE * (midi - C4)) / 12;
}

/** When the next strike after that of this moment begins; undefined: none does, or one key follows the other too fast to tell. */
function nextStrikeSec(sinceSec: number, notes: readonly PlayedNote[]): number | undefined {
  let lastSec = sinceSec;
  for (const { timeSec } of notes) {
    if (timeSec - lastSec >= ONE_STRIKE_SEC) return timeSec;
    lastSec = Math.max(lastSec, timeSec);
  }
  return undefined;
}

const partialsOf = (
  { midi, cents, stiffness = typicalStiffness(midi) }: PlayedNote,
  count: number,
  tuningCents: number,
): readonly number[] =>
  Array.from(
    { length: count },
    (_, at) => midiToHz(midi + (cents + tuningCents) / 100) * partialRatio(at + 1, stiffness),
  );

const soundsAt = (note: PlayedNote, freqHz: number, tuningCents: number): boolean =>
  partialsOf(note, OTHERS_FIRST, tuningCents).some((own) => Math.abs(own - freqHz) < APART_HZ);

const togetherDb = (levelsDb: readonly number[]): number =>
  10 * Math.log10(levelsDb.reduce((sum, one) => sum + 10 ** (one / 10), 0));

const HANN = hann(WINDOW);

/** Power of a partial about a moment (Goertzel 1958), dB. */
function levelDb({ samples }: KeptSound, freqHz: number, timeSec: number): number {
  const from = Math.round(timeSec * RATE_HZ) - WINDOW / 2;
  const turn = 2 * Math.cos((2 * Math.PI * freqHz) / RATE_HZ);
  let before = 0;
  let last = 0;
  for (let i = 0; i < WINDOW; i++) {
    const next = (samples[from + i] ?? 0) * HANN[i]! + turn * last - before;
    before = last;
    last = next;
  }
  const power = last ** 2 + before ** 2 - turn * last * before;
  return 10 * Math.log10(power / WINDOW ** 2 + 1e-14);
}

/** How likely chance alone makes `count` or more of so many ring on: the upper end of a binomial distribution. */
function chanceOfAtLeast(count: number, of: number): number {
  let term = (1 - BY_CHANCE) ** of;
  let below = 0;
  for (let k = 0; k < count; k++) {
    below += term;
    term *= ((of - k) / (k + 1)) * (BY_CHANCE / (1 - BY_CHANCE));
  }
  return 1 - below;
}
