import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assess, assessHeard } from '../../src/engine/assess.ts';
import { writeReport } from '../../src/engine/report/index.ts';
import { decodeFile } from '../../src/io/decode/index.ts';
import { findingOf } from '../../src/engine/listen/findings.ts';
import { attempt, heardOf, played } from './match/simulated.ts';

const speech = findingOf({ notice: 'speech', places: 9 });
const noise = findingOf({ notice: 'noise', aboveDb: 9 });
const silence = findingOf({ notice: 'silence' });

describe('the whole path from what was heard', () => {
  it('reports on the exercise chosen', () => {
    const { heard, exercise } = attempt({ key: 'E minor', octaves: 2 });
    const assessment = assessHeard(heard, exercise.choice, { targetBpm: 80 });
    expect(assessment).toMatchObject({
      kind: 'report',
      report: {
        format: 'evenfall-report',
        version: 1,
        exercise: { key: 'E minor', form: 'arpeggio', hands: 'right', octaves: 2, octaveShift: 0 },
        targetBpm: 80,
        missed: [],
        unsure: [],
      },
    });
  });

  it('recognises the exercise where none is chosen', () => {
    const { heard, exercise } = attempt({ key: 'B major', form: 'scale', octaves: 2 });
    expect(assessHeard(heard, null)).toMatchObject({ kind: 'report', report: { exercise: exercise.choice } });
  });

  it('says that it recognises nothing in notes at random', () => {
    const notes = [41, 88, 63, 70, 55, 90, 37].map((midi, index) => played(1 + index, midi));
    expect(assessHeard(heardOf(notes), null).kind).toBe('not-recognised');
  });

  it.each([
    ['nothing', [], { notice: 'no-notes' }],
    ['silence', [silence], silence.notice],
    ['noise and speech', [noise, speech], speech.notice],
  ])('finds no playing in %s, and says why', (_, findings, reason) => {
    expect(assessHeard(heardOf([], { findings }), null)).toMatchObject({ kind: 'no-playing', reason });
  });

  it('finds no playing in a few notes that speech brought about', () => {
    const notes = [60, 49, 51].map((midi, index) => played(1 + index, midi));
    const { exercise } = attempt({ octaves: 2 });
    const heard = heardOf(notes, { findings: [speech] });
    expect(assessHeard(heard, exercise.choice)).toMatchObject({ kind: 'no-playing', reason: speech.notice });
    expect(assessHeard(heard, null)).toMatchObject({ kind: 'no-playing', reason: speech.notice });
  });

  it('sets the tuning right of a piano that was read a semitone off', () => {
    const { heard, exercise } = attempt(
      { key: 'D major', octaves: 2 },
      {},
      { readsOff: -1, tuningCents: 30 },
    );
    const assessment = assessHeard(heard, exercise.choice);
    expect(assessment).toMatchObject({ kind: 'report', report: { tuning: { cents: -70 }, missed: [] } });
    if (assessment.kind !== 'report') return;
    // a tuning of −70 cents puts A4 at 440 · 2^(−70/1200) Hz (closed form)
    expect(assessment.report.tuning.a4Hz).toBeCloseTo(440 * 2 ** (-70 / 1200), 6);
    expect(assessment.report.notes.map((note) => note.name)).toEqual(
      exercise.steps.map((step) => step.notes[0]!.name),
    );
  });
});

describe('what was listened to once', () => {
  it('can be told again in another language, from what the assessment keeps', async () => {
    const file = resolve(import.meta.dirname, '../../audio-fixtures/missed-and-repeated/attempt.wav');
    const bytes = readFileSync(file);
    const audio = await decodeFile(
      bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength),
      'attempt.wav',
    );
    const english = assess(audio, null);
    if (english.kind !== 'report') throw new Error(english.kind);
    const { heard, heardAgain = heard, alignment } = english;
    const locale = { language: 'de', naming: 'german' } as const;
    const german = assess(audio, null, { locale });
    if (german.kind !== 'report') throw new Error(german.kind);
    expect(writeReport(heardAgain, alignment, { locale })).toEqual(german.report);
    expect(german.report.words.verdict).not.toBe(english.report.words.verdict);
  });
});
