import { NO_MISTAKES } from './render.ts';
import type { RenderSpec } from './render.ts';

/** One committed recording: what happens in it, in a sentence, and how it is made. */
export interface Fixture {
  readonly name: string;
  readonly story: string;
  readonly spec: RenderSpec;
}

const SHORT = { leadInSec: 0.5, leadOutSec: 0.6 };

/** Scenarios of our own. The first is the attempt that the application opens as its demonstration. */
export const FIXTURES: readonly Fixture[] = [
  {
    name: 'late-thumb',
    story:
      'A♭ major arpeggio, two octaves, right hand: every note right and even, but the thumb comes 120 ms late each time that it passes under on the way up.',
    spec: {
      seed: 20_501,
      piano: 'dev',
      exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
      student: {
        ...SHORT,
        bpm: 88,
        jitterMs: 6,
        lateCrossing: { ms: 120, kind: 'thumb-under', direction: 'up' },
        thumbDb: 1.5,
        overlapMs: 15,
      },
      home: { tuningCents: -18, room: { decaySec: 0.35, directDb: 6 } },
    },
  },
  {
    name: 'clean-scale',
    story: 'E major scale, one octave, right hand: played as it should be.',
    spec: {
      seed: 20_502,
      piano: 'dev',
      exercise: { key: 'E major', form: 'scale', hands: 'right', octaves: 1 },
      student: { ...SHORT, bpm: 96, jitterMs: 5, loudnessJitterDb: 0.6 },
      home: { tuningCents: 3 },
    },
  },
  {
    name: 'natural-for-sharp',
    story:
      'D major arpeggio, two octaves, right hand: on the way up F natural is struck once in place of the signature’s F sharp.',
    spec: {
      seed: 20_503,
      piano: 'dev',
      exercise: { key: 'D major', form: 'arpeggio', hands: 'right', octaves: 2 },
      student: { ...SHORT, bpm: 76, mistakes: [{ kind: 'wrong', step: 4, note: 0, midi: 77 }] },
      home: { tuningCents: -12, phone: true },
    },
  },
  {
    name: 'missed-and-repeated',
    story: 'G major scale, two octaves, right hand: one note is left out and one is struck twice.',
    spec: {
      seed: 20_504,
      piano: 'dev',
      exercise: { key: 'G major', form: 'scale', hands: 'right', octaves: 2 },
      student: { ...SHORT, bpm: 120, mistakes: { ...NO_MISTAKES, missed: 1, repeats: 1 } },
      home: { tuningCents: -25 },
    },
  },
  {
    name: 'broken-triads',
    story: 'D minor broken triads, right hand: right and detached, a little soft.',
    spec: {
      seed: 20_505,
      piano: 'test',
      exercise: { key: 'D minor', form: 'broken-triads', hands: 'right', octaves: 1 },
      student: { ...SHORT, bpm: 66, overlapMs: -60, velocity: 50 },
      home: { peakDb: -14 },
    },
  },
  {
    name: 'flat-and-noisy',
    story:
      'F major arpeggio, two octaves, right hand, on a piano 62 cents flat, with dishes and mains hum in the room, by a phone.',
    spec: {
      seed: 20_506,
      piano: 'dev',
      exercise: { key: 'F major', form: 'arpeggio', hands: 'right', octaves: 2 },
      student: { ...SHORT, bpm: 72, jitterMs: 14 },
      home: {
        tuningCents: -62,
        scatterCents: 5,
        stretch: 1,
        phone: true,
        room: { decaySec: 0.5, directDb: 3 },
        noises: [
          { kind: 'pink', belowDb: 35 },
          { kind: 'hum', belowDb: 30 },
          { kind: 'dishes', belowDb: 26 },
        ],
      },
    },
  },
  {
    name: 'left-hand',
    story: 'C minor arpeggio, two octaves, left hand: right, with the thumb heavier than the rest.',
    spec: {
      seed: 20_507,
      piano: 'test',
      exercise: { key: 'C minor', form: 'arpeggio', hands: 'left', octaves: 2 },
      student: { ...SHORT, bpm: 80, thumbDb: 4, loudnessJitterDb: 0.7 },
      home: { tuningCents: -8 },
    },
  },
  {
    name: 'restart',
    story: 'A major scale, one octave, right hand: the student stops, goes back a few notes and carries on.',
    spec: {
      seed: 20_508,
      piano: 'dev',
      exercise: { key: 'A major', form: 'scale', hands: 'right', octaves: 1 },
      student: { ...SHORT, bpm: 92, mistakes: { ...NO_MISTAKES, restarts: 1 } },
      home: { tuningCents: -5 },
    },
  },
  {
    name: 'progression',
    story: 'G major I–IV–I–V7–I, hands together: right, the left hand a little ahead.',
    spec: {
      seed: 20_509,
      piano: 'dev',
      exercise: { key: 'G major', form: 'progression', hands: 'together', octaves: 1 },
      student: {
        ...SHORT,
        bpm: 60,
        chordSpreadMs: 18,
        handsApartMs: { mean: 22, sd: 5 },
        overlapMs: -30,
      },
      home: { tuningCents: -10 },
    },
  },
];
