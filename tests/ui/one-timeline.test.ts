import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess, buildExercise, timelineOf } from '../../src/engine/index.ts';
import type { Exercise, ExerciseChoice, Report } from '../../src/engine/index.ts';
import { decodeFile } from '../../src/io/decode/index.ts';
import { layOut } from '../../src/terminal/drawing/layout.ts';
import { versionsOf } from '../../src/ui/attempt/retiming.ts';
import { drawPearls } from '../../src/ui/plots/pearls/picture.ts';
import { played } from '../engine/match/simulated.ts';
import { ARPEGGIO, reportOf, withIntervals } from '../engine/report/measures/series.ts';

const FIXTURES = readdirSync('audio-fixtures', { withFileTypes: true }).filter((entry) =>
  entry.isDirectory(),
);

async function assessed(name: string): Promise<{ report: Report; exercise: Exercise }> {
  const truth = JSON.parse(readFileSync(`audio-fixtures/${name}/truth.json`, 'utf8')) as {
    exercise: ExerciseChoice;
  };
  const bytes = new Uint8Array(readFileSync(`audio-fixtures/${name}/attempt.wav`)).buffer;
  const sound = await decodeFile(bytes, 'attempt.wav');
  const told = assess(sound, truth.exercise);
  if (told.kind !== 'report') throw new Error(told.kind);
  return { report: told.report, exercise: buildExercise(truth.exercise) };
}

/** Somebody waits in it about a key that was perhaps struck again. */
function perhapsAgain(): { report: Report; exercise: Exercise } {
  const notes = withIntervals([400, 430, 380, 410, 640, 395, 405, 420, 390, 400, 415, 400]);
  const { timeSec, midi } = notes[4]!;
  const report = reportOf([...notes, played(timeSec + 0.2, midi, { confidence: 0.5 })]);
  expect(report.perhapsAgainSec).toHaveLength(1);
  return { report, exercise: buildExercise(ARPEGGIO) };
}

const CASES = [
  ...FIXTURES.map(({ name }) => ({ name, made: () => assessed(name) })),
  { name: 'a key perhaps struck again', made: () => Promise.resolve(perhapsAgain()) },
];

describe.each(CASES)('$name', ({ made }) => {
  let report: Report;
  let exercise: Exercise;
  beforeAll(async () => ({ report, exercise } = await made()));

  it('has its ticks at the same times on the page, in print and in the command', () => {
    const { tickSec } = timelineOf(report, exercise);
    expect([...tickSec.keys()]).toEqual(exercise.steps.map(({ step }) => step));
    expect(layOut(report).tickSec).toEqual(tickSec);
    const limits = { handsApartMs: 40, chordSpreadMs: 40 };
    // A phone, a tablet, and the width at which print is drawn.
    for (const widthPx of [358, 736, 1000]) {
      const picture = drawPearls(report, exercise, { widthPx, markedSteps: new Set(), limits });
      const drawn = picture.rows.flatMap((row) => row.lanes[0]!.ticks.map((tick) => ({ row, ...tick })));
      expect(drawn.map(({ step }) => step)).toEqual([...tickSec.keys()]);
      for (const { row, step, x } of drawn) {
        const at = row.leftPx + (picture.drawnSec(tickSec.get(step)!) - row.startDrawnSec) * picture.pxPerSec;
        expect(x).toBe(Math.min(Math.max(at, 1), widthPx - 1));
      }
    }
  });

  it('is heard even where the timeline makes it even', () => {
    const { strikes } = timelineOf(report, exercise);
    const { even } = versionsOf(report, exercise);
    for (const { notes, timeSec, evenSec } of strikes) {
      const firstSec = Math.min(...notes.map((note) => note.timeSec));
      const attack = even!.attacks.find(
        ({ fromSec, lastSec }) => fromSec <= firstSec && firstSec <= lastSec,
      )!;
      expect(attack.toSec - attack.fromSec).toBeCloseTo(evenSec - timeSec, 12);
    }
  });

  it('calls late in figures what the picture shows late', () => {
    const { strikes, beatSec } = timelineOf(report, exercise);
    const { intervals, tempoBpm } = report.measures;
    expect(intervals.length).toBeGreaterThan(3);
    for (const { step, deviationMs } of intervals) {
      const strike = strikes.find((one) => one.step === step)!;
      expect(deviationMs).toBeCloseTo(1000 * strike.lateSec, 9);
    }
    expect('value' in tempoBpm && tempoBpm.value).toBeCloseTo(60 / beatSec!, 9);
  });

  it('has each late crossing beside its tick, and well so', () => {
    const { strikes } = timelineOf(report, exercise);
    for (const { step, late } of report.measures.crossings)
      if (late) expect(1000 * strikes.find((one) => one.step === step)!.lateSec).toBeGreaterThan(20);
  });
});
