import { nameWithOctave } from '../exercise/index.ts';
import type { NoteNaming } from '../exercise/index.ts';
import { amount } from './amounts.ts';
import type { Tellings } from './types.ts';

const PROCESSING = {
  'echo-cancellation': 'echo cancellation',
  'noise-suppression': 'noise suppression',
  'automatic-gain': 'automatic gain',
} as const;
const DAMPED = { notes: 'most notes', chords: 'most chords', 'this-chord': 'this chord' } as const;
const INTERVALS = {
  first: 'the first interval',
  last: 'the last interval',
  turn: 'the interval after the turn',
} as const;

const are = (count: number): string => (count === 1 ? 'is' : 'are');

/** Every notice in English. Of the sound: whole sentences; of figures and notes: half ones, which stand behind another. */
export function english(naming: NoteNaming): Tellings {
  const of = (name: string): string => nameWithOctave(name, naming);
  return {
    'too-short': ({ lastsSec }) =>
      `The recording lasts ${amount(lastsSec, 2)} s; record from before the first note to after the last.`,
    silence: () => 'The recording is silent; check that the right microphone is chosen and not muted.',
    'bad-samples': ({ samples }) =>
      `${samples} samples were no numbers and were taken as silence; decode or record it again.`,
    'too-quiet': ({ peakDb }) =>
      `The loudest moment reaches only ${amount(peakDb)} dB of full scale; put the microphone nearer or turn its level up.`,
    clipping: ({ times }) =>
      `The sound was cut off ${times} times because it was too loud for the microphone; put it further away or turn its level down.`,
    'dead-channel': ({ channels }) => `One of the ${channels} channels carries no sound; the other was used.`,
    'channels-cancel': ({ lostDb }) =>
      `The channels cancel each other (their mean loses ${amount(lostDb)} dB); the stronger one was used alone.`,
    noise: ({ aboveDb }) =>
      `The playing stands only ${amount(aboveDb)} dB above the noise of the room; close the window or put the microphone nearer.`,
    hum: ({ mainsHz, belowDb }) =>
      `Mains hum at ${amount(mainsHz)} Hz lies ${amount(belowDb)} dB below the playing; move the device away from chargers and cables.`,
    speech: ({ places }) => `A voice seems to sound at ${places} places; notes under it may be missed.`,
    'not-a-piano': () =>
      'There is sound, but nothing in it behaves like a struck piano string; check that the piano was recorded.',
    'no-notes': () => 'No piano notes were heard in it.',
    'not-recognised': () =>
      'The notes fit no exercise of the set well enough to say which. Choose the exercise and its key.',
    'cut-at': ({ minutes }) =>
      `It is longer than ${amount(minutes, minutes % 1 === 0 ? 0 : 1)} minutes; the rest was left out. Cut it to hear the rest.`,
    'partly-read': ({ readSec, wholeSec }) =>
      `Part of the file is missing or damaged: ${amount(readSec, 1)} s of ${amount(wholeSec, 1)} s were read.`,
    'form-changes': ({ afterSec }) =>
      `The sound changes its form after ${amount(afterSec, 1)} s; only what comes before was read.`,
    'channels-left-out': ({ channels, read }) => `It has ${channels} channels; the first ${read} were read.`,
    'one-channel-taken': ({ channels }) => `It has ${channels} channels; the one that sounds most was taken.`,
    'damaged-after': () => 'The file is damaged; what comes before the damage was read.',
    'holes-filled': () =>
      'The recording has holes; they were filled with silence so that the timing stays true.',
    'breaks-off': ({ thereSec, wholeSec }) =>
      `The file breaks off: ${amount(thereSec, 1)} s of ${amount(wholeSec, 1)} s are there.`,
    'device-processing': ({ by }) =>
      `The device recorded with ${PROCESSING[by]} on, which changes loudness and may hide soft notes.`,
    'sound-lost': ({ lostSec }) =>
      `About ${amount(lostSec, lostSec < 1 ? 2 : 1)} s of sound were lost because the device was busy. Close other apps, and play this attempt again.`,
    'page-closed': () => 'The page was closed during this attempt; what had sounded until then was kept.',
    'no-note-judged': () => 'no note could be judged',
    'needs-thumb-and-others': () => 'needs two keys struck by the thumb and two by others',
    'needs-right-notes': ({ needed, there }) => `needs ${needed} right notes; there ${are(there)} ${there}`,
    'needs-right-notes-of-each-hand': () => 'needs three right notes of each hand',
    'within-own-error': ({ errorDb }) =>
      `no more than the error of listening itself, ${amount(errorDb, 1)} dB a note`,
    'needs-intervals': ({ needed, there }) =>
      `needs ${needed} unbroken intervals between steps; there ${are(there)} ${there}`,
    'no-turn': () => 'this exercise has no turn',
    'interval-not-whole': ({ which }) => `${INTERVALS[which]} was not heard whole`,
    'hand-not-known': () => 'nobody said which hand played',
    'no-crossing': () => 'this exercise has no crossing',
    'no-crossing-whole': () => 'no crossing was heard whole',
    'needs-chords': () => 'needs two chords',
    'needs-chords-of-one-hand': () => 'needs two chords of one hand',
    'needs-chords-of-three': () => 'needs two chords of three notes',
    'needs-changes': () => 'needs three changes of chord',
    'needs-steps-of-both-hands': () => 'needs three steps with both hands heard',
    'too-few-between-ends': () => 'too few notes between the ends to compare with',
    'pedal-held': () => 'the pedal was held',
    'levels-cut': () => 'the loudest of the sound was cut off',
    'damping-not-heard': ({ of: what }) => `the damping of ${DAMPED[what]} cannot be heard`,
    'may-be-covered': ({ name }) =>
      `${of(name)} may be covered by the same note an octave below it, which was struck with it`,
    'too-faint-to-name': ({ name }) =>
      `something sounded where ${of(name)} belongs, too faint to say which key`,
    'too-faint': ({ name }) => `${of(name)} was heard too faintly to say that it was struck`,
    'not-certain': ({ name }) => `it is not certain enough whether ${of(name)} was struck`,
    'may-be-held-over': ({ name }) => `${of(name)} may be held over from the chord before`,
  };
}
