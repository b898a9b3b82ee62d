import type { ExerciseChoice } from '../../../src/engine/index.ts';
import { encodeWav } from '../../../src/io/exchange/index.ts';
import type { Assigned, Review, SentAttempt, SoundFile } from '../../../src/io/review/index.ts';
import { writeReview } from '../../../src/io/review/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** Reviews of invented people, to be opened on the page. */

/** A short tone as it travels. */
export function tone(sec = 0.4, freqHz = 440): SoundFile {
  const sampleRateHz = 16_000;
  const samples = Float32Array.from(
    { length: sec * sampleRateHz },
    (_, at) => 0.3 * Math.sin((2 * Math.PI * freqHz * at) / sampleRateHz),
  );
  const bytes = new Uint8Array(encodeWav({ channels: [samples], sampleRateHz }));
  return { bytes, mime: 'audio/wav' };
}

const of = (made: keyof typeof INVENTED) => invent(INVENTED[made]).report;

export const LATE_THUMB: SentAttempt = {
  id: '0mf1c2r81-1a2b3c4d',
  whenMs: Date.UTC(2026, 10, 20, 16),
  name: 'your recording',
  report: of('lateThumb'),
  recognisedAs: null,
  sound: tone(6),
  remarks: [
    {
      id: 'r1',
      place: { kind: 'note', step: 4, midi: 72, timeSec: null },
      text: 'Let the thumb travel as soon as the second finger plays.',
      voice: null,
    },
    { id: 'r2', place: { kind: 'stretch', fromStep: 6, toStep: 9 }, text: '', voice: tone(1, 220) },
    { id: 'r3', place: { kind: 'attempt' }, text: 'Much calmer than last week.', voice: tone(0.6, 330) },
  ],
  corrections: [
    { place: { kind: 'attempt' }, verdict: 'mistaken', why: 'The first late thumb is a breath, I think.' },
  ],
};

export const TOGETHER: SentAttempt = {
  ...LATE_THUMB,
  id: '0mf1c2r82-1a2b3c4d',
  report: of('together'),
  recognisedAs: { key: 'F major', form: 'arpeggio', hands: 'right', octaves: 1 },
  sound: null,
  remarks: [{ id: 'r4', place: { kind: 'attempt' }, text: 'Hands apart again for now.', voice: null }],
  corrections: [],
};

export const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 2 };

export const ASSIGNMENT: readonly Assigned[] = [
  {
    exercise: SCALE,
    targetBpm: 72,
    inARow: 2,
    evennessPercent: 6.5,
    note: 'Listen to the turn at the top.',
  },
  {
    exercise: { key: 'Ab major', form: 'arpeggio', hands: 'together', octaves: 2 },
    targetBpm: 60,
    inARow: null,
    evennessPercent: null,
    note: '',
  },
];

export function review(more: Partial<Review> = {}): Review {
  return {
    kind: 'review',
    id: 'review-one',
    madeMs: Date.UTC(2026, 10, 24, 18, 30),
    student: 'Mira Ohm',
    teacher: 'Ms Ley',
    words: 'Good work this week.\nTwo things to look at below.',
    attempts: [LATE_THUMB, TOGETHER],
    assignment: ASSIGNMENT,
    ...more,
  };
}

/** A review as Playwright hands a file to the page. */
export async function asFile(made: Review, name = 'review.zip') {
  const buffer = Buffer.from(await (await writeReview(made)).arrayBuffer());
  return { name, mimeType: 'application/zip', buffer };
}
