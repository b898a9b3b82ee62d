import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createListener, listen } from '../../../src/engine/listen/index.ts';
import type { Heard } from '../../../src/engine/listen/index.ts';
import { playStrings } from './strings.ts';
import type { StringStroke } from './strings.ts';

const scale: readonly StringStroke[] = [60, 62, 64, 65, 67, 69, 71, 72].map((midi, i) => ({
  timeSec: 0.5 + 0.3 * i,
  midi,
}));
const seconds = 3.6;
const hear = (strokes: readonly StringStroke[], rateHz = 22050, gain = 1): Heard =>
  listen({ channels: [playStrings(strokes, { seconds, rateHz, gain })], sampleRateHz: rateHz });
const keys = (heard: Heard): number[] => heard.notes.map(({ midi }) => midi);

describe('listening to strings made by formula', () => {
  it('hears a scale: every key, each onset within 5 ms', () => {
    const heard = hear(scale);
    expect(keys(heard)).toEqual(scale.map(({ midi }) => midi));
    heard.notes.forEach(({ timeSec }, i) =>
      expect(Math.abs(timeSec - scale[i]!.timeSec)).toBeLessThan(0.005),
    );
    expect(heard.passages).toHaveLength(1);
  });

  it.each([8000, 11025, 44100, 48000, 96000])('hears it at %i Hz', (rateHz) => {
    expect(keys(hear(scale, rateHz))).toEqual(scale.map(({ midi }) => midi));
  });

  it.each([-55, -30, 0, 20, 35])('reads a piano %i cents from A4 = 440 Hz (ISO 16) to 3 cents', (cents) => {
    const { tuning } = hear(scale.map((stroke) => ({ ...stroke, cents })));
    expect(Math.abs(tuning.cents - cents)).toBeLessThan(3);
    expect(tuning.a4Hz).toBeCloseTo(440 * 2 ** (tuning.cents / 1200), 6);
  });

  it('names a single string that strays by 18 cents', () => {
    const stray = scale.map((stroke) => (stroke.midi === 67 ? { ...stroke, cents: 18 } : stroke));
    const [found, ...others] = hear(stray).tuning.strays;
    expect(found?.midi).toBe(67);
    expect(Math.abs(found!.cents - 18)).toBeLessThan(4);
    expect(others).toEqual([]);
  });

  it.each([39, 48, 72, 80])('hears the same figure from MIDI key %i on', (lowest) => {
    const figure = [0, 4, 7, 12].map((step, i) => ({
      timeSec: 0.5 + 0.4 * i,
      midi: lowest + step,
      stiffness: 4e-4,
    }));
    expect(keys(hear(figure))).toEqual(figure.map(({ midi }) => midi));
  });

  it('hears a key struck again', () => {
    const again = [0, 1, 2].map((i) => ({ timeSec: 0.5 + 0.4 * i, midi: 64 }));
    expect(keys(hear(again))).toEqual([64, 64, 64]);
  });

  it('tells louder from softer: 6 dB to within 1 dB', () => {
    const [soft, loud] = hear([
      { timeSec: 0.5, midi: 64, amplitude: 0.1 },
      { timeSec: 1.5, midi: 67, amplitude: 0.2 },
    ]).notes;
    expect(Math.abs(loud!.levelDb - soft!.levelDb - 6.02)).toBeLessThan(1);
  });

  it('gives confidences between 0 and 1', () => {
    for (const { confidence } of hear(scale).notes) {
      expect(confidence).toBeGreaterThan(0.5);
      expect(confidence).toBeLessThanOrEqual(1);
    }
  });
});

describe('what listening must not depend on', () => {
  it('gain: the same notes 30 dB softer, all levels 30 dB lower', () => {
    const loud = hear(scale);
    const soft = hear(scale, 22050, 10 ** (-30 / 20));
    expect(keys(soft)).toEqual(keys(loud));
    soft.notes.forEach((note, i) => {
      expect(note.levelDb).toBeCloseTo(loud.notes[i]!.levelDb - 30, 1);
      expect(note.timeSec).toBeCloseTo(loud.notes[i]!.timeSec, 3);
    });
  });

  it('where in the recording it stands: shifted by any time, the onsets shift with it within twice the stated timing noise', () => {
    const { notes: reference, onsetSdMs } = hear(scale);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.45, noNaN: true }), (shiftSec) => {
        const { notes } = hear(scale.map((stroke) => ({ ...stroke, timeSec: stroke.timeSec + shiftSec })));
        expect(notes.map(({ midi }) => midi)).toEqual(reference.map(({ midi }) => midi));
        notes.forEach(({ timeSec }, i) =>
          expect(Math.abs(timeSec - shiftSec - reference[i]!.timeSec)).toBeLessThan((2 * onsetSdMs) / 1000),
        );
      }),
      { numRuns: 6 },
    );
  });

  it('the key it is played in: transposed by semitones, the keys move with it', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9, max: 14 }), (semitones) => {
        const moved = scale.map((stroke) => ({ ...stroke, midi: stroke.midi + semitones }));
        expect(keys(hear(moved))).toEqual(moved.map(({ midi }) => midi));
      }),
      { numRuns: 8 },
    );
  });

  it('how it is cut into blocks: pushed piece by piece it is the batch to the last bit', () => {
    const sound = playStrings(scale, { seconds, rateHz: 44100 });
    const batch = listen({ channels: [sound], sampleRateHz: 44100 });
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 40_000 }), { minLength: 1, maxLength: 12 }),
        (lengths) => {
          const listener = createListener({ sampleRateHz: 44100, channels: 1 });
          for (let at = 0, turn = 0; at < sound.length; turn++) {
            const length = lengths[turn % lengths.length]!;
            listener.push([sound.subarray(at, at + length)]);
            at += length;
          }
          expect(listener.finish()).toEqual(batch);
        },
      ),
      { numRuns: 5 },
    );
  });

  it('when it is asked: notes so far are the beginning of the notes of the end', () => {
    // The ear believes the tuning only after four seconds of sound, so it is asked later than that.
    const long = Array.from({ length: 24 }, (_, i) => ({ timeSec: 0.5 + 0.4 * i, midi: scale[i % 8]!.midi }));
    const sound = playStrings(long, { seconds: 11 });
    const listener = createListener({ sampleRateHz: 22050, channels: 1 });
    listener.push([sound.subarray(0, 22050 * 8)]);
    const soFar = listener.notesSoFar().map(({ midi }) => midi);
    listener.push([sound.subarray(22050 * 8)]);
    const all = listener.finish().notes.map(({ midi }) => midi);
    expect(soFar.length).toBeGreaterThan(12);
    expect(all.slice(0, soFar.length)).toEqual(soFar);
  });
});
