import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../../src/engine/index.ts';
import type { Report } from '../../../src/engine/index.ts';
import { cutPart, type Part } from '../../../src/io/playback/part.ts';
import { versionsOf, type Versions } from '../../../src/ui/attempt/retiming.ts';
import { render, type Rendered } from '../../support/render.ts';
import { UNEVEN } from './uneven.ts';

/** The uneven attempts listened to, re-timed, and listened to again by our own engine. */
interface Heard {
  readonly sound: Rendered;
  readonly report: Report;
  readonly versions: Versions;
}

/** Mean onset of each step, seconds. */
function stepTimes(report: Report): ReadonlyMap<number, number> {
  const times = new Map<number, number[]>();
  for (const note of report.notes)
    if (note.verdict !== 'extra' && note.step !== null)
      times.set(note.step, [...(times.get(note.step) ?? []), note.timeSec]);
  return new Map(
    [...times].map(([step, all]) => [step, all.reduce((sum, sec) => sum + sec, 0) / all.length]),
  );
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))]!;

/** How far steps are heard from where they were put, ms. */
const offMs: number[] = [];
/** notes more than in the recording itself, by attempt */
const extras: number[] = [];
const slowExtras: number[] = [];
/** right notes of which nothing is said any more, all attempts */
const slowUnsure: string[] = [];

describe.each(UNEVEN)('$name', ({ exercise, student }) => {
  let first: Heard;
  beforeAll(async () => {
    const sound = await render({ seed: 3, piano: 'dev', exercise, student });
    const told = assess(sound, exercise);
    if (told.kind !== 'report') throw new Error(told.kind);
    first = { sound, report: told.report, versions: versionsOf(told.report, told.alignment.exercise) };
  });
  const play = (speed: number, attacks = first.versions.played.attacks): Part =>
    cutPart(first.sound, 0, first.report.audio.durationSec, speed, attacks)!;
  const again = (part: Pick<Part, 'channels'>): Report => {
    const { sampleRateHz } = first.sound;
    const told = assess({ channels: part.channels, sampleRateHz }, exercise);
    if (told.kind !== 'report') throw new Error(told.kind);
    return told.report;
  };
  const counted = ({ notes, missed, unsure }: Report) =>
    [
      ...notes.map((note) => note.verdict),
      ...missed.map(() => 'missed'),
      ...unsure.map(() => 'unsure'),
    ].sort();

  const rightOnes = ({ notes }: Report) =>
    notes
      .filter((note) => note.verdict === 'correct')
      .map(({ step, midi }) => `${step} ${midi}`)
      .sort();

  it('made even is heard even, every right note still right', () => {
    const part = play(1, first.versions.even!.attacks);
    const even = again(part);
    expect(rightOnes(even)).toEqual(rightOnes(first.report));
    extras.push(counted(even).length - counted(first.report).length);
    const before = stepTimes(first.report);
    for (const [step, sec] of stepTimes(even))
      offMs.push(Math.abs(1000 * (sec - part.map.toHeard(before.get(step)!))));
    const { evennessPercent } = even.measures;
    expect('value' in evennessPercent ? evennessPercent.value : Infinity).toBeLessThan(1);
  });

  it('at half speed every right note is still right, but for those of which nothing is said', () => {
    const slow = again(play(0.5));
    const unsure = slow.unsure.map(({ step, midi }) => `${step} ${midi}`);
    expect([...rightOnes(slow), ...unsure].sort()).toEqual(rightOnes(first.report));
    slowUnsure.push(...unsure);
    slowExtras.push(counted(slow).length - counted(first.report).length);
  });

  it('has no click where pieces join: nothing sharper than in the recording itself', () => {
    const sharpest = (sound: Float32Array): number => {
      let most = 0;
      for (let i = 2; i < sound.length; i++)
        most = Math.max(most, Math.abs(sound[i]! - 2 * sound[i - 1]! + sound[i - 2]!));
      return most;
    };
    // Only what lies between attacks: those are sharp, and copied as they are.
    const part = play(1, first.versions.even!.attacks);
    const { sampleRateHz, channels } = first.sound;
    const between = (sound: Float32Array, timesSec: readonly number[]): number =>
      timesSec.slice(1).reduce((most, sec, index) => {
        const from = Math.round((timesSec[index]! + 0.03) * sampleRateHz);
        const to = Math.round((sec - 0.012) * sampleRateHz);
        return Math.max(most, sharpest(sound.subarray(from, to)));
      }, 0);
    const onsets = first.report.notes.map((note) => note.timeSec);
    const made = between(part.channels[0]!, onsets.map(part.map.toHeard));
    expect(made).toBeLessThanOrEqual(1.5 * between(channels[0]!, onsets));
  });
});

// The sound around an attack is copied to the sample (true-onsets.test.ts), so what is left is how finely the listener hears.
it('steps made even are heard within 3.5 ms of their places, 95 of 100', () => {
  expect(offMs.length).toBeGreaterThan(50);
  expect(quantile(offMs, 0.5)).toBeLessThan(1.5);
  expect(quantile(offMs, 0.95)).toBeLessThan(3.5);
});

// Where a ringing tone cannot go on in phase, its swell may be heard as a soft stroke: of 21 attempts with 413 notes in one
// (hands together).
it('being made even adds hardly a note: one in all these attempts at most', () => {
  expect(extras).toHaveLength(UNEVEN.length);
  expect(extras.reduce((sum, more) => sum + more, 0)).toBeLessThanOrEqual(1);
});

// With the third closer look one covered note of twelve such attempts (264 notes; four here) is left unsure at half speed; none is missed.
it('half speed leaves one note unsure in all these attempts at most', () => {
  expect(slowUnsure.length).toBeLessThanOrEqual(1);
});

// Of 21 attempts at half speed four notes too many were heard: stretched, a neighbour's ringing may swell like a slip. Of these
// four attempts and three further seeds of each, 348 notes, it was one with the first closer look and is two with the second.
it('half speed adds hardly a note: two in all these attempts at most', () => {
  expect(slowExtras).toHaveLength(UNEVEN.length);
  expect(slowExtras.reduce((sum, more) => sum + more, 0)).toBeLessThanOrEqual(2);
});
