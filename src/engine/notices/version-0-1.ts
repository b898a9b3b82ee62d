import * as v from 'valibot';
import { NOTICE } from './types.ts';
import type { Notice, NoticeName } from './types.ts';

/**
 * What version 0.1 kept as an English sentence in reports, journals and lists, and the notice that says the same: {name} is a
 * value. Only what it really kept; nothing is added here.
 */
const SENTENCES: readonly (readonly [name: NoticeName, sentence: string, values?: object])[] = [
  ['too-short', 'The recording lasts {lastsSec} s; record from before the first note to after the last.'],
  ['silence', 'The recording is silent; check that the right microphone is chosen and not muted.'],
  ['bad-samples', '{samples} samples were no numbers and were taken as silence; decode or record it again.'],
  [
    'too-quiet',
    'The loudest moment reaches only {peakDb} dB of full scale; put the microphone nearer or turn its level up.',
  ],
  [
    'clipping',
    'The sound was cut off {times} times because it was too loud for the microphone; put it further away or turn its level down.',
  ],
  ['dead-channel', 'One of the {channels} channels carries no sound; the other was used.'],
  [
    'channels-cancel',
    'The channels cancel each other (their mean loses {lostDb} dB); the stronger one was used alone.',
  ],
  [
    'noise',
    'The playing stands only {aboveDb} dB above the noise of the room; close the window or put the microphone nearer.',
  ],
  [
    'hum',
    'Mains hum at {mainsHz} Hz lies {belowDb} dB below the playing; move the device away from chargers and cables.',
  ],
  ['speech', 'A voice seems to sound at {places} places; notes under it may be missed.'],
  [
    'not-a-piano',
    'There is sound, but nothing in it behaves like a struck piano string; check that the piano was recorded.',
  ],
  ['no-notes', 'No piano notes were heard in it.'],
  [
    'not-recognised',
    'The notes fit no exercise of the set well enough to say which. Choose the exercise and its key.',
  ],
  ['cut-at', 'It is longer than {minutes} minutes; the rest was left out. Cut it to hear the rest.'],
  ['partly-read', 'Part of the file is missing or damaged: {readSec} s of {wholeSec} s were read.'],
  ['form-changes', 'The sound changes its form after {afterSec} s; only what comes before was read.'],
  ['channels-left-out', 'It has {channels} channels; the first {read} were read.'],
  ['damaged-after', 'The file is damaged; what comes before the damage was read.'],
  ['holes-filled', 'The recording has holes; they were filled with silence so that the timing stays true.'],
  ['breaks-off', 'The file breaks off: {thereSec} s of {wholeSec} s are there.'],
  ...(['echo cancellation', 'noise suppression', 'automatic gain'] as const).map(
    (by) =>
      [
        'device-processing',
        `The device recorded with ${by} on, which changes loudness and may hide soft notes.`,
        { by: by.replace(' ', '-') },
      ] as const,
  ),
  [
    'sound-lost',
    'About {lostSec} s of sound were lost because the device was busy. Close other apps, and play this attempt again.',
  ],
  ['page-closed', 'The page was closed during this attempt; what had sounded until then was kept.'],
  ['no-note-judged', 'no note could be judged'],
  ['needs-thumb-and-others', 'needs two keys struck by the thumb and two by others'],
  ['needs-right-notes-of-each-hand', 'needs three right notes of each hand'],
  ['needs-right-notes', 'needs {needed} right notes; there is {there}'],
  ['needs-right-notes', 'needs {needed} right notes; there are {there}'],
  ['needs-intervals', 'needs {needed} unbroken intervals between steps; there is {there}'],
  ['needs-intervals', 'needs {needed} unbroken intervals between steps; there are {there}'],
  ['no-turn', 'this exercise has no turn'],
  ['interval-not-whole', 'the first interval was not heard whole', { which: 'first' }],
  ['interval-not-whole', 'the last interval was not heard whole', { which: 'last' }],
  ['interval-not-whole', 'the interval after the turn was not heard whole', { which: 'turn' }],
  ['no-crossing', 'this exercise has no crossing'],
  ['no-crossing-whole', 'no crossing was heard whole'],
  ['needs-chords', 'needs two chords'],
  ['needs-chords-of-one-hand', 'needs two chords of one hand'],
  ['needs-chords-of-three', 'needs two chords of three notes'],
  ['needs-changes', 'needs three changes of chord'],
  ['needs-steps-of-both-hands', 'needs three steps with both hands heard'],
  ['too-few-between-ends', 'too few notes between the ends to compare with'],
  ['damping-not-heard', 'the damping of most notes cannot be heard', { of: 'notes' }],
  ['damping-not-heard', 'the damping of most chords cannot be heard', { of: 'chords' }],
  ['damping-not-heard', 'the damping of this chord cannot be heard', { of: 'this-chord' }],
  ['may-be-covered', '{name} may be covered by the same note an octave below it, which was struck with it'],
  ['too-faint-to-name', 'something sounded where {name} belongs, too faint to say which key'],
  ['too-faint', '{name} was heard too faintly to say that it was struck'],
  ['may-be-held-over', '{name} may be held over from the chord before'],
];

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const PATTERNS = SENTENCES.map(([notice, sentence, values = {}]) => {
  const parts = sentence.split(/\{(\w+)\}/);
  const pattern = parts.map((part, at) => (at % 2 === 0 ? escaped(part) : `(?<${part}>\\S+)`)).join('');
  return { notice, values, pattern: new RegExp(`^${pattern}$`) };
});

/** A sentence that version 0.1 kept → the notice that says the same; null: it is none of its sentences. */
export function fromVersion01(sentence: string): Notice | null {
  for (const { notice, values, pattern } of PATTERNS) {
    const found = pattern.exec(sentence);
    if (found === null) continue;
    const read = Object.entries(found.groups ?? {}).map(
      ([name, text]) => [name, name === 'name' ? text : Number(text.replace('−', '-'))] as const,
    );
    const whole = { notice, ...values, ...Object.fromEntries(read) };
    if (v.is(NOTICE, whole)) return whole;
  }
  return null;
}
