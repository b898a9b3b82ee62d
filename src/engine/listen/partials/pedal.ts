import { mean } from '../../base/statistics.ts';
import { midiToHz } from '../../base/units.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import type { KeptSound, PlayedNote } from '../types.ts';
import { partialRatio, typicalStiffness } from './stiffness.ts';

/** one look at a partial, samples (93 ms), every so many seconds */
const WINDOW = 2048;
const EVERY_SEC = 0.05;
/** partials asked, of the first six, if no other note sounds within this of one of its own first twelve, Hz */
const ASKED = 3;
const OF_FIRST = 6;
const OTHERS_FIRST = 12;
const APART_HZ = 32;
const HIGHEST_HZ = 4000;
/** strings above ring too short to tell (and the topmost have no dampers) */
const HIGHEST_MIDI = 84;
/** notes closer than this are one strike, s */
const TOGETHER_SEC = 0.06;
/** the slowest damper, and a key let go somewhat after the next was struck, s; looked at until so long after that, at least for so long */
const DAMPED_BY_SEC = 0.4;
const UNTIL_SEC = 1.1;
const LEAST_SEC = 0.25;
/** so soon after its onset a tone is at its loudest, s */
const LOUDEST_SEC = [0.06, 0.1] as const;

/**
 * A tone rings on that has lost less than this there, dB. 24 attempts of the development piano with the pedal held and 24 without, rooms to 1.2 s: of
 * the strings asked 50 to 100 % rang on with it (but of one short arpeggio in the treble), at most 29 % without, where a later note
 * sounded near; what a room holds of a damped tone lay under it.
 */
const LOST_DB = 20;
/** At most this share seems to ring on where no pedal is held … */
const BY_CHANCE = 0.3;
/** … and that it was chance must be less likely than this. */
const CHANCE = 0.01;
/** With the pedal held hardly any damping is heard: at most in this share of the notes. */
const DAMPINGS_HEARD = 0.5;

/**
 * Notes of one attempt in order of time, and their sound → whether the pedal was held throughout: strings ring on long after their keys must have been let go,
 * while others are struck, nearly all of them, and no dampings are heard. What is not sure is not said: false also where too few strings
 * can be heard by themselves.
 */
export function pedalHeld(notes: readonly PlayedNote[], sound: KeptSound): boolean {
  const heard = notes.filter(({ releaseSec }) => releaseSec !== null).length;
  if (heard > DAMPINGS_HEARD * notes.length) return false;
  const asked = notes.flatMap((note) => lostDb(note, notes, sound) ?? []);
  const ringing = asked.filter((lost) => lost < LOST_DB).length;
  return asked.length > 0 && chanceOfAtLeast(ringing, asked.length) < CHANCE;
}

/** What a note's own partials have lost two strikes later, dB; undefined: they cannot be heard by themselves. */
function lostDb(note: PlayedNote, notes: readonly PlayedNote[], sound: KeptSound): number | undefined {
  const { midi, timeSec } = note;
  const next = notes.find((other) => other.timeSec > timeSec + TOGETHER_SEC);
  const second = next && notes.find((other) => other.timeSec > next.timeSec + TOGETHER_SEC);
  if (midi > HIGHEST_MIDI || next === undefined || second === undefined) return undefined;
  const again = notes.find((other) => other.midi === midi && other.timeSec > timeSec)?.timeSec ?? Infinity;
  const halfSec = WINDOW / 2 / RATE_HZ;
  const fromSec = Math.max(next.timeSec + DAMPED_BY_SEC, second.timeSec + halfSec);
  const toSec = Math.min(fromSec + UNTIL_SEC - DAMPED_BY_SEC, again - 2 * halfSec);
  const others = notes.filter(
    (other) =>
      other !== note && other.timeSec > timeSec - TOGETHER_SEC && other.timeSec < toSec + 2 * halfSec,
  );
  const freqsHz = partialsOf(note, OF_FIRST)
    .filter((freqHz) => freqHz < HIGHEST_HZ && !others.some((other) => soundsAt(other, freqHz)))
    .slice(0, ASKED);
  if (freqsHz.length === 0 || toSec - fromSec < LEAST_SEC) return undefined;
  const looks = Math.floor((toSec - fromSec) / EVERY_SEC) + 1;
  const left = Array.from({ length: looks }, (_, at) => levelDb(sound, freqsHz, fromSec + at * EVERY_SEC));
  return Math.max(...LOUDEST_SEC.map((sec) => levelDb(sound, freqsHz, timeSec + sec))) - mean(left)!;
}

const partialsOf = (
  { midi, cents, stiffness = typicalStiffness(midi) }: PlayedNote,
  count: number,
): readonly number[] =>
  Array.from({ length: count }, (_, at) => midiToHz(midi + cents / 100) * partialRatio(at + 1, stiffness));

const soundsAt = (note: PlayedNote, freqHz: number): boolean =>
  partialsOf(note, OTHERS_FIRST).some((own) => Math.abs(own - freqHz) < APART_HZ);

const HANN = hann(WINDOW);

/** Power of some partials together about a moment (Goertzel 1958), dB. */
function levelDb({ samples }: KeptSound, freqsHz: readonly number[], timeSec: number): number {
  const from = Math.round(timeSec * RATE_HZ) - WINDOW / 2;
  const power = freqsHz.reduce((sum, freqHz) => {
    const turn = 2 * Math.cos((2 * Math.PI * freqHz) / RATE_HZ);
    let before = 0;
    let last = 0;
    for (let i = 0; i < WINDOW; i++) {
      const next = (samples[from + i] ?? 0) * HANN[i]! + turn * last - before;
      before = last;
      last = next;
    }
    return sum + last ** 2 + before ** 2 - turn * last * before;
  }, 0);
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
