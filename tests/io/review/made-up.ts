import { encodeWav } from '../../../src/io/exchange/index.ts';
import type { Review, SoundFile } from '../../../src/io/review/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

/** The head of a WebM file (RFC 8794: EBMLVersion 1 … DocType "webm") and bytes that stand for the rest. */
export function webm(rest: number): SoundFile {
  const head =
    '\x1a\x45\xdf\xa3\x9f\x42\x86\x81\x01\x42\xf7\x81\x01\x42\xf2\x81\x04\x42\xf3\x81\x08\x42\x82\x84webm';
  const bytes = new Uint8Array(head.length + rest);
  bytes.set([...head].map((letter) => letter.charCodeAt(0)));
  for (let at = head.length; at < bytes.length; at++) bytes[at] = (at * 73) & 255;
  return { bytes, mime: 'audio/webm' };
}

export function wav(frames: number): SoundFile {
  const channels = [Float32Array.from({ length: frames }, (_, i) => 0.3 * Math.sin(i / 9))];
  return { bytes: new Uint8Array(encodeWav({ channels, sampleRateHz: 8000 })), mime: 'audio/wav' };
}

/** A review with everything in it that a review can hold. All invented. */
export function madeUp(): Review {
  const late = invent(INVENTED.lateThumb).report;
  const together = invent(INVENTED.together).report;
  return {
    kind: 'review',
    id: 'rv-2026-11-25-a',
    madeMs: Date.UTC(2026, 10, 25, 18, 30),
    student: 'Student Seven',
    teacher: 'The teacher on the hill',
    words: 'Good work this week.\n\nTake the arpeggio slower than you think.',
    attempts: [
      {
        id: '0mnoabcd1-0001',
        whenMs: Date.UTC(2026, 10, 24, 17),
        name: 'monday evening.webm',
        report: late,
        recognisedAs: null,
        sound: webm(3000),
        remarks: [
          {
            id: 'r1',
            place: { kind: 'note', step: 4, midi: late.notes[4]!.midi, timeSec: late.notes[4]!.timeSec },
            text: 'Bring the thumb under sooner: it may already lie there.',
            voice: webm(800),
          },
          {
            id: 'r2',
            place: { kind: 'stretch', fromStep: 6, toStep: 9 },
            text: 'Lovely and even here.',
            voice: null,
          },
          { id: 'r3', place: { kind: 'attempt' }, text: '', voice: wav(400) },
        ],
        corrections: [
          {
            place: { kind: 'attempt' },
            verdict: 'mistaken',
            why: 'The first C was in time; the pedal hid it.',
          },
        ],
      },
      {
        id: '0mnoabcd2-0002',
        whenMs: null,
        name: 'both hands',
        report: together,
        recognisedAs: { key: 'F major', form: 'arpeggio', hands: 'together', octaves: 1 },
        sound: null,
        remarks: [],
        corrections: [
          {
            place: { kind: 'note', step: 5, midi: 52, timeSec: null },
            verdict: 'correct',
            why: 'It was the right key, struck very softly.',
          },
        ],
      },
    ],
    assignment: [
      {
        exercise: { key: 'Ab major', form: 'arpeggio', hands: 'right', octaves: 2 },
        targetBpm: 60,
        inARow: 3,
        evennessPercent: 8,
        intention: { times: 3, rhythm: 'long-short', stretch: { fromStep: 0, toStep: 6 } },
        note: 'Only the first octave until Thursday.',
      },
      {
        exercise: {
          ...{ key: 'A minor', form: 'scale', hands: 'together', octaves: 2, minorScale: 'melodic' },
          ...{ notesABeat: 4, register: 1 },
          fingering: { written: [{ hand: 'left', step: 2, fromBottom: 0, finger: 2 }] },
        },
        targetBpm: null,
        inARow: null,
        evennessPercent: null,
        note: '',
      },
    ],
  };
}

/** The same with what the teacher played as an example for its first attempt. */
export function withExample(review = madeUp()): Review {
  const [first, ...others] = review.attempts;
  const example = {
    ...first!,
    id: 'example',
    exampleFor: first!.id,
    sound: webm(900),
    remarks: [],
    corrections: [],
  };
  return { ...review, attempts: [first!, example, ...others] };
}
