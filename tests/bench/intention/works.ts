import type { Form, Loudness, Rhythm, Touch } from '../../../src/engine/index.ts';

/** Something to practise, of which forms, how long a stretch (steps, or one way; null: the whole), how often. */
export interface Work {
  readonly name: string;
  readonly rhythm: Rhythm;
  readonly forms: readonly Form[];
  readonly steps: readonly [number, number] | 'up' | 'down' | null;
  readonly times: number;
  /** hand positions struck as chords */
  readonly blocked?: true;
  readonly touch?: Touch;
  readonly loudness?: Loudness;
  /** both hands, always */
  readonly together?: true;
  /** what other attempts taught of the piano is at hand */
  readonly pianoKnown?: true;
}

const LINES: readonly Form[] = ['arpeggio', 'scale'];

export const WORKS: readonly Work[] = [
  { name: 'stretch, three times', rhythm: 'even', forms: LINES, steps: [4, 9], times: 3 },
  { name: 'stretch, five times', rhythm: 'even', forms: LINES, steps: [3, 6], times: 5 },
  { name: 'chords, three times', rhythm: 'even', forms: ['triads', 'progression'], steps: [3, 4], times: 3 },
  { name: 'long–short, twice', rhythm: 'long-short', forms: LINES, steps: [6, 12], times: 2 },
  { name: 'short–long, twice', rhythm: 'short-long', forms: LINES, steps: [6, 12], times: 2 },
  { name: 'the whole long–short', rhythm: 'long-short', forms: LINES, steps: null, times: 1 },
  { name: 'groups of two', rhythm: 'groups-of-2', forms: LINES, steps: [8, 13], times: 2 },
  { name: 'groups of three', rhythm: 'groups-of-3', forms: LINES, steps: [9, 13], times: 2 },
  { name: 'groups of four', rhythm: 'groups-of-4', forms: ['scale'], steps: null, times: 1 },
  { name: 'groups of six', rhythm: 'groups-of-6', forms: ['scale'], steps: null, times: 1 },
  { name: 'stop before crossings', rhythm: 'stop-before-crossings', forms: LINES, steps: null, times: 1 },
  { name: 'stop on each beat', rhythm: 'stop-on-each-beat', forms: LINES, steps: [8, 13], times: 3 },
  {
    name: 'chords one by one',
    rhythm: 'stop-on-each-step',
    forms: ['triads', 'progression'],
    steps: [3, 4],
    times: 3,
  },
  {
    name: 'chords prepared silently',
    rhythm: 'prepared-silently',
    forms: ['triads', 'progression'],
    steps: null,
    times: 2,
  },
  { name: 'one note more', rhythm: 'one-note-more', forms: LINES, steps: [4, 7], times: 2 },
  {
    name: 'positions of an arpeggio',
    rhythm: 'even',
    forms: ['arpeggio'],
    steps: null,
    times: 2,
    blocked: true,
  },
  { name: 'positions of a scale', rhythm: 'even', forms: ['scale'], steps: null, times: 1, blocked: true },
  { name: 'legato', rhythm: 'even', forms: LINES, steps: null, times: 1, touch: 'legato' },
  { name: 'detached', rhythm: 'even', forms: LINES, steps: null, times: 1, touch: 'detached' },
  { name: 'staccato', rhythm: 'even', forms: LINES, steps: null, times: 1, touch: 'staccato' },
  {
    name: 'growing, piano known',
    rhythm: 'even',
    forms: LINES,
    steps: 'up',
    times: 2,
    loudness: 'growing',
    pianoKnown: true,
  },
  {
    name: 'fading, piano known',
    rhythm: 'even',
    forms: LINES,
    steps: 'down',
    times: 2,
    loudness: 'fading',
    pianoKnown: true,
  },
  {
    name: 'growing, piano unknown',
    rhythm: 'even',
    forms: LINES,
    steps: null,
    times: 1,
    loudness: 'growing',
  },
  {
    name: 'accents in fours, piano known',
    rhythm: 'even',
    forms: ['scale'],
    steps: null,
    times: 1,
    loudness: 'accents-of-4',
    pianoKnown: true,
  },
  {
    name: 'accents in threes, piano unknown',
    rhythm: 'even',
    forms: LINES,
    steps: null,
    times: 1,
    loudness: 'accents-of-3',
  },
  {
    name: 'left hand over right',
    rhythm: 'even',
    forms: LINES,
    steps: null,
    times: 1,
    loudness: 'left-over-right',
    together: true,
  },
  { name: 'the way up', rhythm: 'even', forms: LINES, steps: 'up', times: 3 },
  { name: 'the way down', rhythm: 'even', forms: LINES, steps: 'down', times: 2 },
];

/** Ways of doing it that are not what was asked. */
export type Flaw =
  | 'other-touch'
  | 'other-loudness'
  | 'wrong-note'
  | 'too-few'
  | 'too-fast'
  | 'the-whole'
  | 'even-instead'
  | 'turned'
  | 'stop';

/** Which of them a work can be spoilt by. */
export function flawsOf({ rhythm, steps, times, blocked, touch, loudness }: Work): readonly Flaw[] {
  if (touch !== undefined) return ['other-touch'];
  if (loudness !== undefined) return ['other-loudness'];
  const pairs = rhythm === 'long-short' || rhythm === 'short-long';
  const free = ['stop-on-each-step', 'prepared-silently', 'one-note-more'].includes(rhythm) || blocked;
  return [
    'wrong-note',
    ...(times > 1 ? (['too-few'] as const) : []),
    ...(Array.isArray(steps) && times > 1 && rhythm === 'even' ? (['the-whole'] as const) : []),
    ...(rhythm === 'even' && !blocked
      ? (['too-fast', 'stop'] as const)
      : free
        ? []
        : (['even-instead'] as const)),
    ...(pairs ? (['turned'] as const) : []),
  ];
}
