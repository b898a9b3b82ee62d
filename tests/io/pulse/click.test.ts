import { describe, expect, it } from 'vitest';
import { assess, createLiveListener } from '../../../src/engine/index.ts';
import type { ExerciseChoice, LiveEvent } from '../../../src/engine/index.ts';
import { CLICK_SEC, clickSamples } from '../../../src/io/pulse/click.ts';
import { pinkNoise } from '../../support/home/noise.ts';
import { createRandom } from '../../support/random.ts';
import { render } from '../../support/render.ts';
import { withClicks } from './with-clicks.ts';

/** Peaks of the click in a recording whose playing peaks at −8 dB: from far softer to a little louder than the playing. */
const PEAKS_DB = [-20, -6] as const;

const CASES: readonly {
  readonly exercise: ExerciseChoice;
  readonly bpm: number;
  readonly fromSec: number;
}[] = [
  // On the beat, between beats, and chords.
  { exercise: { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 2 }, bpm: 80, fromSec: 0.1 },
  { exercise: { key: 'E major', form: 'scale', hands: 'left', octaves: 2 }, bpm: 100, fromSec: 0.23 },
  { exercise: { key: 'A minor', form: 'progression', hands: 'right', octaves: 1 }, bpm: 60, fromSec: 0.4 },
];

describe('our own click', () => {
  it('has died away when it ends, and stays within full scale', () => {
    for (const first of [true, false]) {
      const samples = clickSamples(48_000, first);
      expect(samples.length / 48_000).toBeCloseTo(CLICK_SEC, 3);
      expect(Math.max(...samples.map(Math.abs))).toBeLessThan(1);
      expect(Math.abs(samples.at(-1)!)).toBeLessThan(1e-3);
    }
  });

  it.each(CASES)(
    'all the way through $exercise.key · $exercise.form adds no note to the report and takes none away',
    async ({ exercise, bpm, fromSec }) => {
      const sound = await render({
        seed: 11,
        piano: 'dev',
        exercise,
        student: { bpm, leadInSec: 1.5 },
        home: { peakDb: -8 },
      });
      const found = [sound, ...PEAKS_DB.map((peakDb) => withClicks(sound, { bpm, fromSec, peakDb }))].map(
        (heard) => {
          const assessment = assess(heard, exercise, { targetBpm: bpm });
          if (assessment.kind !== 'report') return assessment.reason;
          // Sorted: which key of a chord came first by a few ms is no matter here.
          return assessment.report.notes.map(({ midi, verdict }) => `${midi} ${verdict}`).sort();
        },
      );
      expect(found[0]).not.toHaveLength(0);
      for (const clicked of found.slice(1)) expect(clicked).toEqual(found[0]);
    },
  );

  it('while nobody plays begins no attempt, with the ear told of it', () => {
    const sampleRateHz = 44_100;
    const room = Float32Array.from(pinkNoise(20 * sampleRateHz, createRandom(5)), (value) => value * 0.001);
    const { channels } = withClicks(
      { channels: [room], sampleRateHz },
      { bpm: 80, fromSec: 0.5, peakDb: -6 },
    );
    const ear = createLiveListener({ sampleRateHz, channels: 1 }, {});
    for (let atSec = 0.5; atSec < 20; atSec += 0.75)
      ear.mute({ fromSec: atSec - 0.03, toSec: atSec + 0.25, kind: 'click' });
    const events: LiveEvent[] = [];
    for (let at = 0; at < room.length; at += 4096)
      events.push(...ear.push([channels[0]!.subarray(at, at + 4096)]));
    expect(events.some(({ kind }) => kind === 'level')).toBe(true);
    expect(events.filter(({ kind }) => kind === 'started')).toEqual([]);
  });
});
