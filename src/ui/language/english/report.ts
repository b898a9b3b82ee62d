import type { ExtraKind } from '../../../engine/index.ts';

const EXTRA: Readonly<Record<ExtraKind, string>> = {
  slip: 'extra (slip)',
  repeat: 'extra (repeat)',
  restart: 'extra (restart)',
  other: 'extra',
};

/** The report. Figures come with their units. */
export const REPORT = {
  heard: 'What was heard',
  stop: 'Stop',
  playAll: 'Play it all',
  next: 'Next:',
  allFound: 'All that was found',
  switchTo: 'Switch to it',
  meant: (title: string) => `No, I meant ${title}`,
  whichHand: (likelier: 'left' | 'right') =>
    `Which hand played cannot be heard. It is measured as the ${likelier}, which is likelier where it lies.`,
  whichHandKeys: 'Which hand: L, R, or B for both',
  wasHand: { left: 'It was the left', right: 'It was the right', together: 'It was both' },
  setUp: 'Set it up',
  print: 'Print',
  whatItMeans: ': what it means',
  notMeasured: (reason: string) => `not measured: ${reason}`,
  table: 'Every note, as a table',
  tableOfNotes: 'Table of the notes',
  note: 'Note',
  heardAs: 'Heard',
  hand: 'Hand',
  finger: 'Finger',
  time: 'Time',
  loudness: 'Loudness',
  asRight: 'right',
  asWrong: (struck: string) => `wrong: ${struck} struck`,
  EXTRA,
  asMissed: 'missed',
  asUnsure: (reason: string) => `not sure: ${reason}`,
  keyNumber: (midi: number) => `key ${midi}`,
  otherOctave: (octaves: number, hand: 'left' | 'right' | null) =>
    `${hand === null ? 'Played' : `The ${hand} hand played`} ${Math.abs(octaves) === 1 ? 'an octave' : `${Math.abs(octaves)} octaves`} ` +
    `${octaves > 0 ? 'higher' : 'lower'} than written; that is no mistake.`,
  playedAgain: (times: number) =>
    `The exercise was played ${times} times; this is the report of one of them.`,
  stopBefore: (gap: string, note: number) => `A stop of ${gap} before note ${note}.`,
};

/** The list of measures: what each is called, how its figure reads, and what it means in a teacher's words. */
export const MEASURES = {
  notes: {
    term: 'Notes',
    definition:
      'Every written note is judged once: right, wrong (another key in its place), missed, or not sure; those not sure count on neither side.',
    meaning:
      'Right notes of those written. Extra notes are those that answer no written one: a neighbour caught, a note ' +
      'struck again, or going back.',
    of: (right: number, expected: number, rest: string) => `${right} of ${expected}, ${rest}`,
    wrong: (count: number) => `${count} wrong`,
    missed: (count: number) => `${count} missed`,
    unsure: (count: number) => `${count} not sure`,
    extra: (count: number) => (count === 0 ? 'none extra' : `${count} extra`),
  },
  evenness: {
    term: 'Variation of time',
    definition:
      '100 times the standard deviation of the times from step to step (per beat) over their mean, with the listening’s own timing error taken out (coefficient of variation, as van Vugt et al. 2012).',
    meaning:
      'How much the time from note to note varies, in per cent of that time; 0 would be a machine. How much still ' +
      'counts as even depends on the tempo. The ± is what the listening itself may be off by.',
    without: (amount: string) => `; without the crossings ${amount}`,
    upTo: (amount: string) => `; up to ${amount} is even at this tempo`,
  },
  crossings: {
    term: 'Crossings',
    definition:
      'The time into the crossing less the median of the four nearest times without a crossing. Late: over a tenth of that time, in fast playing over 24 ms (four times what is just noticed, Friberg & Sundberg 1995; four times: common practice, no source) or what was set, and beyond your own scatter elsewhere.',
    meaning:
      'How much longer the step into a crossing takes (thumb under, or a finger over the thumb) than the steps ' +
      'around it. Plus is late.',
    up: (delays: string) => `${delays} going up`,
    down: (delays: string) => `${delays} coming down`,
    range: (least: string, most: string) => `${least} to ${most}`,
  },
  spread: {
    term: 'Chords struck as one',
    definition:
      'Last onset less first onset within one hand, the listening’s own error taken out; the median over all chords. Order can be told apart from about 20 ms on (Hirsh 1959).',
    meaning:
      'From the first to the last note of a chord, the middle one of all chords. Up to 40 ms sounds as one.',
    figure: (spread: string) => `${spread} from first to last note`,
  },
  changes: {
    term: 'Changes of chord',
    definition: 'The longest time from chord to chord over the median of the others.',
    meaning: 'The slowest change against the usual one; 1 is no hesitation.',
    figure: (ratio: string) => `the slowest takes ${ratio} times the usual`,
    silence: (amount: string) => `; ${amount} of silence between chords`,
    held: (amount: string) => `; chords held ${amount} into the next`,
    either: (amount: string) => `; chords connected or just apart (± ${amount})`,
  },
  inner: {
    term: 'Inner notes',
    definition:
      'Mean level of the inner notes of chords less that of the outer notes of the same chords, in decibels.',
    meaning: 'How loud the inner notes of the chords are against the outer ones.',
    louder: (amount: string) => `${amount} louder than the outer`,
    softer: (amount: string) => `${amount} softer than the outer`,
    either: (amount: string) => `louder or softer than the outer (± ${amount})`,
  },
  together: {
    term: 'Hands together',
    definition:
      'At each step the mean onset of the left hand’s notes less that of the right hand’s; over the steps its mean (who leads) and its standard deviation, the listening’s own error taken out.',
    meaning:
      'Which hand comes first, on the average, and how much that varies from step to step. Up to 40 ms sounds together; ' +
      'the louder hand comes some 25 ms sooner by itself.',
    left: (amount: string) => `left first by ${amount}`,
    right: (amount: string) => `right first by ${amount}`,
    either: (amount: string) => `neither surely first (± ${amount})`,
    varies: (amount: string) => `; varies by ${amount}`,
  },
  loudness: {
    term: 'Variation of loudness',
    definition:
      'Standard deviation of the levels of right notes about a straight line over pitch, for each hand; where this piano’s keys are known from other attempts, about the level of each key. A change is audible from about 0.7 to 1.2 dB (Slade et al. 2022).',
    meaning:
      'How much loudness varies from note to note, after taking out that low and high keys sound differently loud. ' +
      'As long as this piano’s keys are not known, their own differences are in it. A change of about one decibel can just be heard.',
    asItSounds: ', as it sounds here',
    keysAllowedFor: ', the keys of this piano allowed for',
    thumbLouder: (amount: string) => `; the thumb ${amount} louder than the others`,
    thumbSofter: (amount: string) => `; the thumb ${amount} softer than the others`,
  },
  tempo: {
    term: 'Tempo',
    definition:
      '60 divided by the median time a beat, in seconds. The drift is the slope of a straight line through all times that lead into no crossing.',
    meaning: 'Beats a minute, from the middle interval: a hesitation does not move it.',
    aim: (bpm: string) => ` (aim ${bpm})`,
    steady: ', steady',
    slower: (amount: string) => `, ${amount} slower by the end`,
    faster: (amount: string) => `, ${amount} faster by the end`,
  },
  touch: {
    term: 'Touch',
    definition:
      'Median over all notes of a hand: damping of a note less the onset of the next. Left out where the damping of most notes cannot be heard.',
    meaning:
      'How long a key is still held when the next one sounds (connected), or how long the gap is (detached).',
    connected: (amount: string) => `connected: notes overlap by ${amount}`,
    detached: (amount: string) => `detached: gaps of ${amount}`,
    either: (amount: string) => `connected or just apart (± ${amount})`,
  },
  piano: {
    term: 'The piano',
    definition:
      'The mean over the keys heard of each one’s median deviation from equal temperament on A = 440 Hz; outliers are left out, and half the usual stretch is allowed for.',
    meaning: 'Where this piano stands as a whole. Nothing that you played: the listening follows it.',
    asAFork: 'as a tuning fork',
    cents: (count: number) => (count === 1 ? 'cent' : 'cents'),
    flat: (amount: string) => `${amount} flat`,
    sharp: (amount: string) => `${amount} sharp`,
  },
};
