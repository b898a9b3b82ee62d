import { expect, it } from 'vitest';
import { assess, buildExercise, timelineOf } from '../../../src/engine/index.ts';
import type { Exercise, Report } from '../../../src/engine/index.ts';
import { cutPart } from '../../../src/io/playback/part.ts';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import { render, type Rendered, type TrueNote } from '../../support/render.ts';
import { UNEVEN } from './uneven.ts';

/** The bound of "hear it even". */
const MOST_MS = 3;
/** About a true onset: its rise, which is its own and no neighbour's. */
const BEFORE_SEC = 0.002;
const AFTER_SEC = 0.012;
/** how far off an onset would still be found, seconds */
const SEARCH_SEC = 0.03;

/** A report that heard everything when it was struck: the re-timing alone is under test. */
function trulyHeard(report: Report, { notes }: Rendered['truth']): Report {
  return {
    ...report,
    notes: report.notes.map((heard) => {
      const near = notes.filter(({ midi }) => midi === heard.midi);
      const truth = near.reduce((best, note) =>
        Math.abs(note.timeSec - heard.timeSec) < Math.abs(best.timeSec - heard.timeSec) ? note : best,
      );
      expect(Math.abs(truth.timeSec - heard.timeSec), `${heard.midi}`).toBeLessThan(0.03);
      return { ...heard, timeSec: truth.timeSec };
    }),
  };
}

/** Each key that was struck → where it should be: its step on the even place, itself as far from its step's middle as it was. */
function evenPlaces(notes: readonly TrueNote[], exercise: Exercise, bpm: number): readonly number[] {
  const middle = (step: number | null): number => {
    const times = notes.filter((note) => note.step === step).map(({ timeSec }) => timeSec);
    return times.reduce((sum, sec) => sum + sec, 0) / times.length;
  };
  const first = exercise.steps[0]!;
  return notes.map(({ step, timeSec }) => {
    const beats = exercise.steps[step!]!.beat - first.beat;
    return middle(first.step) + (beats * 60) / bpm + timeSec - middle(step);
  });
}

/** Where in `made` the sound of `recorded` about `fromSec` is, sought about `nearSec`: seconds, and how alike it is. */
function found(
  recorded: Float32Array,
  made: Float32Array,
  rateHz: number,
  fromSec: number,
  nearSec: number,
): { readonly atSec: number; readonly alike: number } {
  const from = Math.round((fromSec - BEFORE_SEC) * rateHz);
  const length = Math.round((BEFORE_SEC + AFTER_SEC) * rateHz);
  const near = Math.round((nearSec - BEFORE_SEC) * rateHz);
  let best = { atSec: NaN, alike: -1 };
  for (let move = -SEARCH_SEC * rateHz; move <= SEARCH_SEC * rateHz; move += 1) {
    const start = near + Math.round(move);
    let [product, energyA, energyB] = [0, 1e-12, 1e-12];
    for (let i = 0; i < length; i += 1) {
      const [a, b] = [recorded[from + i] ?? 0, made[start + i] ?? 0];
      product += a * b;
      energyA += a * a;
      energyB += b * b;
    }
    const alike = product / Math.sqrt(energyA * energyB);
    if (alike > best.alike) best = { atSec: fromSec + (start - from) / rateHz, alike };
  }
  return best;
}

/** How far off their places, at the tempo that `report` has, the true onsets are in the sound that is made of it, ms. */
function offMsOf(sound: Rendered, report: Report, exercise: Exercise): number[] {
  const { channels, sampleRateHz, truth } = sound;
  const places = evenPlaces(truth.notes, exercise, 60 / timelineOf(report, exercise).beatSec!);
  const { attacks } = versionsOf(report, exercise).even!;
  const part = cutPart(sound, 0, report.audio.durationSec, 1, attacks)!;
  return truth.notes.map(({ timeSec }, index) => {
    const { atSec, alike } = found(channels[0]!, part.channels[0]!, sampleRateHz, timeSec, places[index]!);
    expect(alike).toBeGreaterThan(0.99);
    return 1000 * (atSec - places[index]!);
  });
}

/** True onsets off even: where the re-timing was told when each was struck, and where it had what our listener heard. */
const toldMs: number[] = [];
const heardMs: number[] = [];

it.each(UNEVEN)(
  '$name made even has each true onset on its even place',
  async ({ exercise: choice, student }) => {
    const sound = await render({ seed: 3, piano: 'dev', exercise: choice, student });
    const assessed = assess(sound, choice);
    if (assessed.kind !== 'report') throw new Error(assessed.kind);
    const { report } = assessed;
    const exercise = buildExercise(choice);
    const told = offMsOf(sound, trulyHeard(report, sound.truth), exercise);
    toldMs.push(...told);
    expect(Math.max(...told.map(Math.abs))).toBeLessThan(MOST_MS);
    const heard = offMsOf(sound, report, exercise);
    // All are placed from the first; how far that was off is no unevenness.
    const common = [...heard].sort((a, b) => a - b)[heard.length >> 1]!;
    heardMs.push(...heard.map((off) => off - common));
  },
);

// Measured on these four attempts, 87 keys: told when they were struck, 0.02 ms off at most; with what our listener heard, 89 in
// 100 within 3 ms, 8.8 at most (one step of both hands, whose two onsets the listener took to be earlier).
it('what is left over comes from when notes were heard to be struck, not from the re-timing', () => {
  const most = (ms: readonly number[]): number => Math.max(...ms.map(Math.abs));
  const within = heardMs.filter((off) => Math.abs(off) <= MOST_MS).length / heardMs.length;
  console.log(
    `true onsets off even: ${most(toldMs).toFixed(2)} ms at most where told when they were struck; with what was heard ` +
      `${(100 * within).toFixed(0)} in 100 within ${MOST_MS} ms, ${most(heardMs).toFixed(1)} ms at most`,
  );
  expect(toldMs.length).toBeGreaterThan(80);
  expect(most(toldMs)).toBeLessThan(0.05);
  expect(within).toBeGreaterThan(0.85);
});
