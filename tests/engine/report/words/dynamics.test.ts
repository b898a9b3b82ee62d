import { describe, expect, it } from 'vitest';
import type { ExerciseChoice } from '../../../../src/engine/exercise/index.ts';
import type { Report } from '../../../../src/engine/report/index.ts';
import { writeReport } from '../../../../src/engine/report/index.ts';
import { buildExercise } from '../../../../src/engine/exercise/index.ts';
import { matchNotes } from '../../../../src/engine/match/index.ts';
import { createRandom } from '../../../support/random.ts';
import { heardOf, played } from '../../match/simulated.ts';
import { playNotes } from './scenes.ts';

const SCALE: ExerciseChoice = { key: 'D major', form: 'scale', hands: 'right', octaves: 1 };
const GERMAN = { language: 'de', naming: 'german' } as const;

/** Keys of a piano that differ by 3 dB (SD) and rise with pitch, a hand that scatters by 1 dB; and `byDb` on purpose. */
function shaped(
  choice: ExerciseChoice,
  byDb: (step: number) => number,
  seed: number,
  german = false,
): Report {
  const random = createRandom(seed);
  const keysDb = Array.from({ length: 128 }, (_, midi) => random.normal(3) + 0.2 * (midi - 60));
  const notes = playNotes({ choice }).map((note) => ({
    ...note,
    levelDb: -20 + keysDb[note.midi]! + random.normal(1),
  }));
  const exercise = buildExercise(choice);
  const keysAStep = exercise.steps[0]!.notes.length;
  const louder = notes.map((note, index) => ({
    ...note,
    levelDb: note.levelDb + byDb(Math.floor(index / keysAStep)),
  }));
  const heard = heardOf(louder, { onsetSdMs: 1, levelSdDb: 0.9 });
  return writeReport(heard, matchNotes(heard, exercise), german ? { locale: GERMAN } : {});
}

const codes = ({ words }: Report): readonly string[] =>
  words.said!.statements.map(({ situation }) => situation);
const SEEDS = [1, 2, 3, 4, 5];

describe('what is shaped in loudness is named, on a piano whose keys differ and are not known', () => {
  it.each([
    [
      'accents on every third note',
      'accented-in-groups',
      (step: number) => (step % 3 === 0 ? 7 : 0),
      /every third note is accented, by about \d+ dB/,
    ],
    [
      'accents on every fourth note',
      'accented-in-groups',
      (step: number) => (step % 4 === 0 ? 7 : 0),
      /every fourth note is accented/,
    ],
    [
      'a crescendo through the whole',
      'loudness-shaped',
      (step: number) => 0.7 * step,
      /you grow louder from beginning to end, by about \d+ dB/,
    ],
    [
      'a decrescendo through the whole',
      'loudness-shaped',
      (step: number) => -0.7 * step,
      /you grow softer from beginning to end, by about \d+ dB/,
    ],
  ])('%s', (_, code, byDb, sentence) => {
    for (const seed of SEEDS) {
      const { words } = shaped(SCALE, byDb, seed);
      expect(words.said!.statements.map(({ situation }) => situation)).toContain(code);
      expect(words.said!.statements.map(({ faults }) => faults)).not.toContain(1);
      expect(words.verdict).toMatch(sentence);
      expect(words.verdict).toMatch(/^Every note right/);
      expect(words.verdict).not.toMatch(/uneven|thumb/);
    }
  });

  it('and in German', () => {
    expect(shaped(SCALE, (step) => (step % 3 === 0 ? 7 : 0), 1, true).words.verdict).toMatch(
      /jeder dritte Ton ist betont, um etwa \d+ dB\.$/,
    );
    expect(shaped(SCALE, (step) => 0.7 * step, 1, true).words.verdict).toMatch(
      /du wirst vom Anfang zum Ende lauter, um etwa \d+ dB\.$/,
    );
  });
});

describe('nobody shaped anything', () => {
  it.each([
    ['one hand, a scale', SCALE],
    ['one hand, two octaves', { ...SCALE, octaves: 2 }],
    ['an arpeggio', { ...SCALE, form: 'arpeggio', octaves: 2 }],
    ['broken triads', { ...SCALE, form: 'broken-triads' }],
    ['both hands', { ...SCALE, hands: 'together', octaves: 2 }],
  ] as const)('%s: of a hundred attempts one at most is said to be', (_, choice) => {
    const said = Array.from({ length: 100 }, (__, seed) => codes(shaped(choice, () => 0, 100 + seed)));
    const falsely = said.filter(
      (all) => all.includes('accented-in-groups') || all.includes('loudness-shaped'),
    );
    expect(falsely.length).toBeLessThanOrEqual(1);
  });

  it('a thumb that is louder each time is no accent: it has the same keys both ways', () => {
    const thumbs = buildExercise({ ...SCALE, octaves: 2 }).steps.map(({ notes }) => notes[0]!.finger === 1);
    for (const seed of SEEDS)
      expect(codes(shaped({ ...SCALE, octaves: 2 }, (step) => (thumbs[step] ? 6 : 0), seed))).not.toContain(
        'accented-in-groups',
      );
  });

  it('a swell to the turn and back sounds like a piano that is louder in the treble, and is not told of one that is not known', () => {
    for (const seed of SEEDS)
      expect(codes(shaped(SCALE, (step) => Math.min(step, 14 - step), seed))).not.toContain(
        'loudness-shaped',
      );
  });
});

describe('the pedal', () => {
  const heard = heardOf(playNotes({ choice: SCALE }), { onsetSdMs: 1 });
  const report = (pedalHeld: boolean, german = false): Report =>
    writeReport(heard, matchNotes(heard, buildExercise(SCALE)), {
      pedalHeld,
      ...(german && { locale: GERMAN }),
    });

  it('is told where it was held, and nothing of the touch', () => {
    const { measures, words } = report(true);
    expect(measures.pedalHeld).toBe(true);
    expect(measures.touchMs).toMatchObject({ notice: { notice: 'pedal-held' } });
    expect(words.situation).toBe('at-the-criterion');
    expect(words.verdict).toBe('Every note right, and even; the pedal stays down.');
    expect(report(true, true).words.verdict).toMatch(/das Pedal bleibt getreten\.$/);
  });

  it('keeps strings ringing: a key that seems to sound again with another one is none too many, by itself it is', () => {
    const notes = playNotes({ choice: SCALE });
    const extrasOf = (midi: number, timeSec: number, held: boolean): number => {
      const more = heardOf([...notes, played(timeSec, midi, { confidence: 0.9999 })], { onsetSdMs: 1 });
      const told = writeReport(more, matchNotes(more, buildExercise(SCALE)), { pedalHeld: held });
      return told.notes.filter(({ verdict }) => verdict === 'extra').length;
    };
    const [third, eighth, ninth] = [notes[2]!, notes[7]!, notes[8]!];
    expect(extrasOf(third.midi, eighth.timeSec + 0.01, true)).toBe(0);
    expect(extrasOf(third.midi, eighth.timeSec + 0.01, false)).toBe(1);
    expect(extrasOf(third.midi, (eighth.timeSec + ninth.timeSec) / 2, true)).toBe(1);
    expect(extrasOf(eighth.midi - 1, eighth.timeSec + 0.01, false)).toBe(1);
  });

  it('else there is no word of it', () => {
    const { measures, words } = report(false);
    expect(measures).not.toHaveProperty('pedalHeld');
    expect(measures.touchMs).toHaveProperty('value');
    expect(words.verdict).not.toMatch(/pedal/);
  });
});
