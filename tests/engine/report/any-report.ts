import fc from 'fast-check';
import { allChoices, buildExercise } from '../../../src/engine/exercise/index.ts';
import type { ExerciseChoice } from '../../../src/engine/exercise/index.ts';
import type { AudioFinding, PlayedNote } from '../../../src/engine/listen/index.ts';
import { matchNotes } from '../../../src/engine/match/index.ts';
import { writeReport } from '../../../src/engine/report/index.ts';
import type { Report } from '../../../src/engine/report/index.ts';
import { heardOf, played } from '../match/simulated.ts';

const CHOICES = allChoices();
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Notes that anybody may have struck, whatever the exercise. */
const anyNotes: fc.Arbitrary<readonly PlayedNote[]> = fc.array(
  fc
    .record({
      timeSec: number(0, 40),
      midi: fc.integer({ min: 21, max: 108 }),
      levelDb: number(-80, 0),
      confidence: number(0, 1),
      lastsSec: fc.option(number(0.02, 3)),
    })
    .map(({ timeSec, midi, lastsSec, ...rest }) =>
      played(timeSec, midi, { ...rest, releaseSec: lastsSec === null ? null : timeSec + lastsSec }),
    ),
  { maxLength: 40 },
);

const ONE_NOTE = fc.record({
  lateSec: number(-0.08, 0.08),
  midiOff: fc.oneof(
    { weight: 12, arbitrary: fc.constant(0) },
    { weight: 1, arbitrary: fc.integer({ min: -3, max: 3 }) },
  ),
  sounds: fc.oneof({ weight: 12, arbitrary: fc.constant(true) }, { weight: 1, arbitrary: fc.boolean() }),
  levelDb: number(-40, -5),
});

/** The exercise played by somebody: late, wrong, missing notes, hands in other octaves, begun again, a long stop, other notes between. */
const playing = (choice: ExerciseChoice): fc.Arbitrary<readonly PlayedNote[]> => {
  const { steps } = buildExercise(choice);
  const places = steps.flatMap(({ beat, notes }) => notes.map((note) => ({ beat, ...note })));
  return fc
    .record({
      bpm: number(40, 160),
      octaves: fc.record({ left: fc.integer({ min: -2, max: 2 }), right: fc.integer({ min: -2, max: 2 }) }),
      each: fc.array(ONE_NOTE, { minLength: places.length, maxLength: places.length }),
      stop: fc.record({ beat: number(0, 20), sec: fc.constantFrom(0, 0, 4) }),
      begun: fc.nat(places.length),
      others: fc.oneof({ weight: 2, arbitrary: fc.constant([]) }, { weight: 1, arbitrary: anyNotes }),
    })
    .map(({ bpm, octaves, each, stop, begun, others }) => {
      const beatSec = 60 / bpm;
      const at = (beat: number): number => 1 + beat * beatSec + (beat > stop.beat ? stop.sec : 0);
      const beforeSec = begun > places.length / 2 ? 0 : places[begun]!.beat * beatSec + 1;
      const false_ =
        beforeSec === 0 ? [] : places.slice(0, begun).map(({ beat, midi }) => played(at(beat), midi));
      const strokes = places.flatMap(({ beat, midi, hand }, index) => {
        const { lateSec, midiOff, sounds, levelDb } = each[index]!;
        const timeSec = Math.max(0, beforeSec + at(beat) + lateSec);
        return sounds ? [played(timeSec, midi + midiOff + 12 * octaves[hand], { levelDb })] : [];
      });
      return [...false_, ...strokes, ...others];
    });
};

const FINDINGS: readonly AudioFinding[] = [
  { kind: 'clipping', detail: 'Some of the sound is clipped.' },
  { kind: 'hum', detail: 'There is hum at 50 Hz.' },
];

/** Every kind of report that the engine can make: of any exercise, from notes of somebody who plays it or from any notes at all. */
export const anyReport: fc.Arbitrary<Report> = fc.constantFrom(...CHOICES).chain((choice) =>
  fc
    .record({
      notes: fc.oneof({ weight: 4, arbitrary: playing(choice) }, { weight: 1, arbitrary: anyNotes }),
      again: fc.boolean(),
      tuningCents: fc.oneof(number(-60, 30), number(30, 40)),
      onsetSdMs: fc.constantFrom(0, 2),
      findings: fc.subarray([...FINDINGS]),
      targetBpm: fc.option(fc.integer({ min: 20, max: 300 })),
      language: fc.constantFrom('en' as const, 'de' as const),
    })
    .map(({ notes: once, again, tuningCents, onsetSdMs, findings, targetBpm, language }) => {
      const a4Hz = 440 * 2 ** (tuningCents / 1200);
      const tuning = { cents: tuningCents, a4Hz, sdCents: 1, strays: [] };
      // A piano 60 to 70 cents flat is read a semitone low.
      const low = tuningCents > 30 ? once.map((note) => ({ ...note, midi: note.midi - 1 })) : once;
      const lastSec = Math.max(0, ...low.map(({ timeSec }) => timeSec));
      const after = lastSec + 6;
      const twice = low.map((note) => ({ ...note, timeSec: note.timeSec + after, releaseSec: null }));
      const passages = [0, after].map((startSec) => ({ startSec, endSec: startSec + lastSec + 1 }));
      const notes = again ? [...low, ...twice] : low;
      const heard = heardOf(notes, { tuning, findings, onsetSdMs, ...(again && { passages }) });
      const naming = language === 'de' ? 'german' : 'letters';
      return writeReport(heard, matchNotes(heard, buildExercise(choice)), {
        targetBpm,
        locale: { language, naming },
      });
    }),
);
