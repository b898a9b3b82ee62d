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

/** How far steps are heard from where they were put, ms: re-timed, and (for comparison) only shifted by 10 ms. */
const offMs: number[] = [];
const shiftedOffMs: number[] = [];
/** notes more than in the recording itself, by attempt */
const extras: number[] = [];

describe.each(UNEVEN)('$name', ({ exercise, student }) => {
  let first: Heard;
  beforeAll(async () => {
    const sound = await render({ seed: 3, piano: 'dev', exercise, student });
    const told = assess(sound, exercise);
    if (told.kind !== 'report') throw new Error(told.reason);
    first = { sound, report: told.report, versions: versionsOf(told.report, told.alignment.exercise) };
  });
  const play = (speed: number, attacks = first.versions.played.attacks): Part =>
    cutPart(first.sound, 0, first.report.audio.durationSec, speed, attacks)!;
  const again = (part: Pick<Part, 'channels'>): Report => {
    const { sampleRateHz } = first.sound;
    const told = assess({ channels: part.channels, sampleRateHz }, exercise);
    if (told.kind !== 'report') throw new Error(told.reason);
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
      // keys of one chord are heard within milliseconds, in either order
      .sort();

  it('made even is heard even, every right note still right', () => {
    const part = play(1, first.versions.even!.attacks);
    const even = again(part);
    expect(rightOnes(even)).toEqual(rightOnes(first.report));
    extras.push(counted(even).length - counted(first.report).length);
    const before = stepTimes(first.report);
    for (const [step, sec] of stepTimes(even))
      offMs.push(Math.abs(1000 * (sec - part.map.toHeard(before.get(step)!))));
    const { channels, sampleRateHz } = first.sound;
    const shiftFrames = Math.round(0.01 * sampleRateHz);
    const shifted = channels.map((channel) => {
      const later = new Float32Array(channel.length + shiftFrames);
      later.set(channel, shiftFrames);
      return later;
    });
    for (const [step, sec] of stepTimes(again({ channels: shifted })))
      shiftedOffMs.push(Math.abs(1000 * (sec - 0.01 - before.get(step)!)));
    const { evennessPercent } = even.measures;
    expect('value' in evennessPercent ? evennessPercent.value : Infinity).toBeLessThan(1);
  });

  it('at half speed strikes every note once', () => {
    expect(counted(again(play(0.5)))).toEqual(counted(first.report));
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

// Measured: 0.7 ms off in the middle, 98 in 100 within 3 ms, 3.5 at most. A recording that is only shifted is no measure of the
// listener any more: it is anchored at its first blow, and heard the same to 0.1 ms. How far off the listener is without any
// re-timing is told by true-onsets.test.ts.
it('steps made even are heard within 3 ms of their places, 95 in 100', () => {
  expect(offMs.length).toBeGreaterThan(50);
  expect(quantile(offMs, 0.5)).toBeLessThan(1.5);
  expect(offMs.filter((off) => off <= 3).length / offMs.length).toBeGreaterThan(0.9);
  expect(quantile(offMs, 0.95)).toBeLessThanOrEqual(3);
  console.log(
    `heard off even, ${offMs.length} steps: median ${quantile(offMs, 0.5).toFixed(1)} ms, ` +
      `${((100 * offMs.filter((off) => off <= 3).length) / offMs.length).toFixed(0)} in 100 within 3 ms, most ` +
      `${Math.max(...offMs).toFixed(1)}; only shifted: most ${Math.max(...shiftedOffMs).toFixed(1)}`,
  );
});

// Where a ringing tone cannot go on in phase, its swell may be heard as a soft stroke: of 21 attempts with 413 notes in one
// (hands together).
it('being made even adds hardly a note: one in all these attempts at most', () => {
  expect(extras).toHaveLength(UNEVEN.length);
  expect(extras.reduce((sum, more) => sum + more, 0)).toBeLessThanOrEqual(1);
});
