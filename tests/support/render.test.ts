import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildExercise } from '../../src/engine/exercise/index.ts';
import { findAttackSec } from './piano/attack.ts';
import { damperSec } from './piano/play.ts';
import { createRandom } from './random.ts';
import { NO_MISTAKES, render, renderPerformance, SAMPLE_RATE_HZ } from './render.ts';
import type { HomeKnobs, Keystroke, PianoName, Rendered } from './render.ts';
import { STUDENT_DEFAULTS } from './student/knobs.ts';
import { perform } from './student/perform.ts';

const CHOICE = { key: 'C major', form: 'arpeggio', hands: 'right', octaves: 1 } as const;
/** A dead room without noise: nothing but the piano. */
const BARE: Partial<HomeKnobs> = { room: null, noises: [], scatterCents: 0 };

const stroke = (timeSec: number, midi: number, more: Partial<Keystroke> = {}): Keystroke => ({
  timeSec,
  midi,
  velocity: 80,
  releaseSec: timeSec + 2,
  hand: 'right',
  step: null,
  verdict: 'correct',
  ...more,
});

function play(
  piano: PianoName,
  strokes: readonly Keystroke[],
  home: Partial<HomeKnobs> = {},
): Promise<Rendered> {
  return renderPerformance(
    { strokes, missed: [], durationSec: 4, pedal: 'none' },
    { seed: 7, piano, exercise: CHOICE, home: { ...BARE, ...home } },
  );
}

/** Sample by sample. A boolean, since listing the differences of two long arrays takes minutes. */
const same = (a: Rendered, b: Rendered): boolean =>
  a.channels.length === b.channels.length &&
  a.channels.every((channel, index) => {
    const other = b.channels[index]!;
    return channel.length === other.length && channel.every((value, at) => value === other[at]);
  });

const meanDb = (samples: Float32Array, fromSec: number, toSec: number): number => {
  const part = samples.subarray(fromSec * SAMPLE_RATE_HZ, toSec * SAMPLE_RATE_HZ);
  return 10 * Math.log10(part.reduce((sum, value) => sum + value * value, 0) / part.length + 1e-20);
};

/**
 * Frequency by the phase that a Hann-windowed single-bin transform gains between two moments: closed form, and no part of
 * how the renderer measured its samples. `nearHz` must be right within a quarter of 1 / hop.
 */
function frequencyHz(samples: Float32Array, fromSec: number, nearHz: number): number {
  const length = Math.round(0.8 * SAMPLE_RATE_HZ);
  const hop = Math.round(0.01 * SAMPLE_RATE_HZ);
  const phaseAt = (from: number): number => {
    let [re, im] = [0, 0];
    for (let index = 0; index < length; index++) {
      const angle = (2 * Math.PI * nearHz * index) / SAMPLE_RATE_HZ;
      const value = samples[from + index]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * index) / length));
      re += value * Math.cos(angle);
      im -= value * Math.sin(angle);
    }
    return Math.atan2(im, re);
  };
  const from = Math.round(fromSec * SAMPLE_RATE_HZ);
  const expected = (2 * Math.PI * nearHz * hop) / SAMPLE_RATE_HZ;
  const gained = phaseAt(from + hop) - phaseAt(from) - expected;
  const wrapped = gained - 2 * Math.PI * Math.round(gained / (2 * Math.PI));
  return nearHz + (wrapped * SAMPLE_RATE_HZ) / (2 * Math.PI * hop);
}

describe('the attack', () => {
  it.each([0.05, 0.0501234, 0.07337])(
    'of a sine that begins at %f s is found within half a millisecond',
    (at) => {
      const samples = Float32Array.from({ length: SAMPLE_RATE_HZ / 2 }, (_, index) => {
        const sec = index / SAMPLE_RATE_HZ - at;
        return sec < 0 ? 0 : Math.sin(2 * Math.PI * 880 * sec) * Math.exp(-sec * 4);
      });
      expect(Math.abs(findAttackSec(samples, SAMPLE_RATE_HZ, 81) - at) * 1000).toBeLessThan(0.5);
    },
  );

  it.each([
    ['dev', 34, 1.0000113],
    ['dev', 50, 1.2345678],
    ['dev', 62, 0.9],
    ['dev', 76, 1.1111111],
    ['dev', 97, 1.05],
    ['test', 34, 1.0000113],
    ['test', 50, 1.2345678],
    ['test', 76, 0.9],
    ['test', 97, 1.1111111],
  ] as const)('of the %s piano, key %i, lies within 0.5 ms of %f s', async (piano, midi, timeSec) => {
    const { channels } = await play(piano, [stroke(timeSec, midi)]);
    const fromSec = timeSec - 0.04;
    const from = Math.round(fromSec * SAMPLE_RATE_HZ);
    const found = from / SAMPLE_RATE_HZ + findAttackSec(channels[0]!.subarray(from), SAMPLE_RATE_HZ, midi);
    expect(Math.abs(found - timeSec) * 1000).toBeLessThan(0.5);
  });

  it('is not moved by the room', async () => {
    const { channels } = await play('dev', [stroke(1, 69)], { room: { decaySec: 0.5, directDb: 6 } });
    const from = Math.round(0.96 * SAMPLE_RATE_HZ);
    const found = from / SAMPLE_RATE_HZ + findAttackSec(channels[0]!.subarray(from), SAMPLE_RATE_HZ, 69);
    expect(Math.abs(found - 1) * 1000).toBeLessThan(0.5);
  });
});

describe('the tuning', () => {
  // The partials of one real key disagree by up to 4 cents (piano/tune.ts), so a single key is held to 4, the middle of many to 1.
  it.each([
    ['dev', -37.5],
    ['test', -90],
    ['test', 40],
  ] as const)(
    'of the %s piano at %f cents is what the first partials of many keys say',
    async (piano, tuningCents) => {
      const errors: number[] = [];
      for (let midi = 48; midi <= 86; midi += 3) {
        const { channels } = await play(piano, [stroke(0.5, midi, { releaseSec: 3.5 })], { tuningCents });
        const wantedHz = 440 * 2 ** ((midi - 69 + tuningCents / 100) / 12);
        errors.push(1200 * Math.log2(frequencyHz(channels[0]!, 0.55, wantedHz) / wantedHz));
      }
      const sizes = errors.map(Math.abs).sort((a, b) => a - b);
      expect(sizes.at(-2)).toBeLessThan(2);
      expect(sizes[6]).toBeLessThan(0.75);
    },
  );
});

describe('the level', () => {
  it.each([
    ['a dead room', {}],
    ['a living room', { room: { decaySec: 0.4, directDb: 3 } }],
    ['a living room by phone', { room: { decaySec: 0.4, directDb: 3 }, phone: true }],
  ])('of a note alone in %s is what the truth says', async (_, home) => {
    const { channels, truth } = await play('dev', [stroke(1, 60)], home);
    const sineDb = meanDb(channels[0]!, 1, 1.1) + 10 * Math.log10(2);
    expect(Math.abs(sineDb - truth.notes[0]!.levelDb)).toBeLessThan(0.1);
  });

  it('rises by 0.26 dB a step of velocity', async () => {
    const { truth } = await play('test', [
      stroke(0.5, 60, { velocity: 60, releaseSec: 1 }),
      stroke(1.5, 60, { velocity: 80, releaseSec: 2 }),
    ]);
    expect(truth.notes[1]!.levelDb - truth.notes[0]!.levelDb).toBeCloseTo(20 * 0.26, 1);
  });

  it.each([-6, -38])('peaks at %i dB', async (peakDb) => {
    const { channels } = await play('dev', [stroke(1, 60)], { peakDb });
    const peak = channels[0]!.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(20 * Math.log10(peak)).toBeCloseTo(peakDb, 2);
  });
});

describe('the dampers', () => {
  it('silence a middle key in less than a fifth of a second', async () => {
    const { channels } = await play('dev', [stroke(0.5, 60, { releaseSec: 1.5 })]);
    expect(meanDb(channels[0]!, 1.7, 1.8) - meanDb(channels[0]!, 1.4, 1.5)).toBeLessThan(-35);
  });

  it('take longer in the bass, and fifty to three hundred milliseconds everywhere', () => {
    const times = Array.from({ length: 70 }, (_, index) => damperSec(21 + index)!);
    expect(times.every((time, index) => index === 0 || time < times[index - 1]!)).toBe(true);
    expect(Math.max(...times)).toBeLessThanOrEqual(0.301);
    expect(Math.min(...times)).toBeGreaterThanOrEqual(0.049);
  });

  it('do not exist in the top octave and a half', async () => {
    const short = await play('dev', [stroke(0.5, 98, { releaseSec: 0.7 })]);
    const long = await play('dev', [stroke(0.5, 98, { releaseSec: 3 })]);
    expect(same(short, long)).toBe(true);
    expect(short.truth.notes[0]!.releaseSec).toBeNull();
  });

  it('give way to the hammer when a key is struck again', async () => {
    const strokes = [stroke(0.5, 60, { releaseSec: 1.9 }), stroke(1, 60, { velocity: 20, releaseSec: 1.5 })];
    const { channels } = await play('test', strokes);
    expect(meanDb(channels[0]!, 1.1, 1.2) - meanDb(channels[0]!, 0.8, 0.9)).toBeLessThan(-8);
  });
});

describe('the same seed', () => {
  const spec = {
    seed: 3,
    piano: 'dev',
    exercise: CHOICE,
    home: { phone: true, noises: [{ kind: 'speech', belowDb: 20 }], channels: 'stereo' },
  } as const;

  it('gives the same samples and the same truth', async () => {
    const [once, again] = [await render(spec), await render(spec)];
    expect(same(once, again)).toBe(true);
    expect(again.truth).toEqual(once.truth);
  });

  it('gives the same playing when only the home differs', async () => {
    const other = await render({ ...spec, home: { tuningCents: -50 } });
    const times = ({ truth }: Rendered): number[] => truth.notes.map((note) => note.timeSec);
    expect(times(other)).toEqual(times(await render(spec)));
  });

  it('is another performance when it is another seed', async () => {
    expect((await render({ ...spec, seed: 4 })).truth.notes).not.toEqual((await render(spec)).truth.notes);
  });
});

describe('a performance', () => {
  it('accounts for every expected note once, whatever goes wrong', () => {
    const mistakes = fc.record({
      wrong: fc.nat(2),
      missed: fc.nat(2),
      slips: fc.nat(2),
      repeats: fc.nat(2),
      restarts: fc.nat(1),
    });
    const choice = fc.record({
      key: fc.constantFrom('C major', 'F# minor', 'Bb major'),
      form: fc.constantFrom('arpeggio', 'scale', 'triads', 'progression', 'broken-triads'),
      hands: fc.constantFrom('left', 'right', 'together'),
    });
    fc.assert(
      fc.property(choice, mistakes, fc.nat(), (chosen, counts, seed) => {
        const exercise = buildExercise({ ...chosen, octaves: 1 });
        const { strokes, missed } = perform(
          exercise,
          { ...STUDENT_DEFAULTS, mistakes: counts },
          createRandom(seed),
        );
        const wanted = exercise.steps.flatMap(({ step, notes }) =>
          notes.map(({ midi }) => `${step}:${midi}`),
        );
        const answered = [
          ...strokes
            .filter(({ verdict }) => verdict !== 'extra')
            .map(({ step, midi, wantedMidi }) => `${step}:${wantedMidi ?? midi}`),
          ...missed.map(({ step, midi }) => `${step}:${midi}`),
        ];
        expect(answered.sort()).toEqual(wanted.sort());
        expect(missed.length).toBeLessThanOrEqual(counts.missed);
        expect(strokes.every(({ timeSec, releaseSec }) => releaseSec > timeSec)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('with nothing wrong and no jitter falls exactly on its beats', () => {
    const exercise = buildExercise({ ...CHOICE, form: 'scale' });
    const knobs = { ...STUDENT_DEFAULTS, jitterMs: 0, bpm: 120, leadInSec: 1 };
    const { strokes } = perform(exercise, knobs, createRandom(1));
    strokes.forEach(({ timeSec }, index) =>
      expect(timeSec).toBeCloseTo(1 + exercise.steps[index]!.beat * 0.5, 9),
    );
  });

  it('puts a late thumb into its own interval and no other', () => {
    const exercise = buildExercise({ ...CHOICE, form: 'scale' });
    const lateCrossing = { ms: 120, kind: 'thumb-under' } as const;
    const knobs = { ...STUDENT_DEFAULTS, jitterMs: 0, bpm: 60, lateCrossing };
    const { strokes } = perform(exercise, knobs, createRandom(1));
    const late = exercise.steps.filter(({ crossings }) =>
      crossings.some(({ kind }) => kind === 'thumb-under'),
    );
    expect(late.length).toBeGreaterThan(0);
    strokes.slice(1).forEach(({ timeSec, step }, index) => {
      const beats = exercise.steps[index + 1]!.beat - exercise.steps[index]!.beat;
      const extra = late.some((other) => other.step === step) ? 0.12 : 0;
      expect(timeSec - strokes[index]!.timeSec).toBeCloseTo(beats + extra, 9);
    });
  });

  it('goes back and comes again on a restart', () => {
    const exercise = buildExercise({ ...CHOICE, form: 'scale' });
    const knobs = { ...STUDENT_DEFAULTS, mistakes: { ...NO_MISTAKES, restarts: 1 } };
    const { strokes } = perform(exercise, knobs, createRandom(5));
    const again = strokes.filter(({ extraKind }) => extraKind === 'restart');
    expect(again.length).toBeGreaterThanOrEqual(2);
    expect(strokes.length).toBe(exercise.steps.length + again.length);
  });
});
