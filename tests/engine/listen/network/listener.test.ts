import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { createNetworkListener } from '../../../../src/engine/listen/network/index.ts';
import { TRAINED_NETWORK } from '../../../../src/engine/listen/network/weights.ts';
import type { NetworkNote, NetworkTask } from '../../../../src/engine/listen/network/index.ts';
import { render } from '../../../support/render.ts';
import { playing, RATE_HZ, sourceOf } from './sound.ts';

const HOP = TRAINED_NETWORK.shape.hop;
const FRAME_SEC = HOP / RATE_HZ;

function task(samples: Float64Array, spans: NetworkTask['spans']): NetworkTask {
  return { source: sourceOf(samples), cents: 0, gain: 1, lowMidi: 40, highMidi: 83, spans };
}

const everything = (samples: Float64Array): NetworkTask['spans'] => [
  { fromSec: 0, toSec: samples.length / RATE_HZ },
];

describe('the learned ear', () => {
  const samples = playing(1);
  const whole = createNetworkListener().hear(task(samples, everything(samples)));

  it('hears something in the sound that the properties are tried on', () => {
    expect(whole.length).toBeGreaterThan(2);
  });

  it('says the same however the spans are cut into calls, in whatever order', () => {
    const listener = createNetworkListener({ refractorySec: 0 });
    const all = listener.hear(task(samples, everything(samples)));
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 2.2, noNaN: true }), { maxLength: 6 }),
        fc.boolean(),
        (cuts, backwards) => {
          const edges = [0, ...[...cuts].sort((a, b) => a - b), samples.length / RATE_HZ];
          const spans = edges.slice(1).map((toSec, index) => ({ fromSec: edges[index]!, toSec }));
          if (backwards) spans.reverse();
          const heard = spans.flatMap((span) => listener.hear(task(samples, [span])));
          expect(inTime(heard)).toEqual(inTime(all));
        },
      ),
      { numRuns: 8 },
    );
  });

  it('does not hear farther than it says', () => {
    const listener = createNetworkListener();
    const span = { fromSec: 0.6, toSec: 1 };
    const before = listener.hear(task(samples, [span]));
    const from = Math.floor((span.fromSec - listener.lookBackSec) * RATE_HZ);
    const to = Math.ceil((span.toSec + listener.lookAheadSec) * RATE_HZ);
    expect(before.length).toBeGreaterThan(0);
    expect(to).toBeLessThan(samples.length - 1000);
    const loud = samples.map((sample, i) => (i < from || i > to ? Math.sin(i * i) : sample));
    expect(listener.hear(task(loud, [span]))).toEqual(before);
  });

  it('moves with the sound, to the last bit where the sound moves by whole frames', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (frames) => {
        const moved = new Float64Array(samples.length + frames * HOP);
        moved.set(samples, frames * HOP);
        const heard = createNetworkListener().hear(task(moved, everything(moved)));
        expect(heard.map(({ midi, probability }) => [midi, probability])).toEqual(
          whole.map(({ midi, probability }) => [midi, probability]),
        );
        heard.forEach(({ timeSec }, index) =>
          expect(timeSec).toBeCloseTo(whole[index]!.timeSec + frames * FRAME_SEC, 9),
        );
      }),
      { numRuns: 5 },
    );
  });

  it('does not care how loud a recording is, once its gain is known', () => {
    fc.assert(
      fc.property(fc.constantFrom(-40, -20, 6, 20), (db) => {
        const factor = 10 ** (db / 20);
        const louder = {
          ...task(
            samples.map((s) => s * factor),
            everything(samples),
          ),
          gain: 1 / factor,
        };
        const heard = createNetworkListener().hear(louder);
        expect(heard.map(({ midi }) => midi)).toEqual(whole.map(({ midi }) => midi));
        heard.forEach(({ probability, timeSec }, index) => {
          expect(Math.abs(probability - whole[index]!.probability)).toBeLessThan(0.02);
          expect(Math.abs(timeSec - whole[index]!.timeSec)).toBeLessThan(0.001);
        });
      }),
    );
  });

  it('hears nothing in silence', () => {
    const silence = new Float64Array(2 * RATE_HZ);
    expect(createNetworkListener().hear(task(silence, everything(silence)))).toEqual([]);
  });
});

describe('the sound on which the training code reports its own reading', () => {
  // Read from these float16 weights by torch (`Blind` in src/training/look/blind.py, `pick` in listener/targets.py): time, key, score, level. Four tones of eight
  // partials k, each g/k · e^(−(2 + k)τ) · sin(2πkfτ) where k · f < 10 kHz; 1.2 s, levelled by 0.4745464.
  const STRUCK = [
    { onsetSec: 0.3, midi: 52, level: 0.3 },
    { onsetSec: 0.3, midi: 64, level: 0.2 },
    { onsetSec: 0.31, midi: 71, level: 0.25 },
    { onsetSec: 0.7, midi: 69, level: 0.3 },
  ];
  const READ = [
    { timeSec: 0.3010565, midi: 52, probability: 0.9859, levelDb: -0.668 },
    { timeSec: 0.3018435, midi: 71, probability: 0.814, levelDb: 0.28 },
    { timeSec: 0.3028433, midi: 64, probability: 0.6748, levelDb: -0.182 },
    { timeSec: 0.6953917, midi: 69, probability: 0.9402, levelDb: 1.893 },
  ];

  it('is read alike: times to 0.3 ms, scores to 0.01, levels to 0.3 dB', () => {
    const samples = new Float64Array(26_460);
    for (const { onsetSec, midi, level } of STRUCK) {
      const hz = 440 * 2 ** ((midi - 69) / 12);
      for (let i = Math.ceil(onsetSec * RATE_HZ); i < samples.length; i++) {
        const since = i / RATE_HZ - onsetSec;
        for (let k = 1; k <= 8 && k * hz < 10_000; k++)
          samples[i]! += (level / k) * Math.exp(-(2 + k) * since) * Math.sin(2 * Math.PI * k * hz * since);
      }
    }
    const heard = createNetworkListener({ gainStepDb: 0.001 }).hear({
      ...task(samples, everything(samples)),
      gain: 0.4745464,
      lowMidi: 24,
      highMidi: 103,
    });
    expect(heard.map(({ midi }) => midi)).toEqual(READ.map(({ midi }) => midi));
    heard.forEach(({ timeSec, probability, levelDb }, index) => {
      const read = READ[index]!;
      expect(Math.abs(timeSec - read.timeSec)).toBeLessThan(0.0003);
      expect(Math.abs(probability - read.probability)).toBeLessThan(0.01);
      expect(Math.abs(levelDb - read.levelDb)).toBeLessThan(0.3);
    });
  });
});

describe('a chord on the development piano', () => {
  let heard: readonly NetworkNote[] = [];
  let struck: readonly { timeSec: number; midi: number }[] = [];

  beforeAll(async () => {
    const { channels, sampleRateHz, truth } = await render({
      seed: 5,
      piano: 'dev',
      exercise: { key: 'F major', form: 'triads', hands: 'right', octaves: 1 },
    });
    const left = channels[0]!;
    const half = Float64Array.from(
      { length: left.length >> 1 },
      (_, i) => (left[2 * i]! + left[2 * i + 1]!) / 2,
    );
    // truth of the first chord alone; two samples in one is resampling enough for a test of the ear
    expect(sampleRateHz).toBe(2 * RATE_HZ);
    struck = truth.notes.slice(0, 3);
    const at = struck[0]!.timeSec;
    heard = createNetworkListener()
      .hear({ ...task(half, [{ fromSec: at - 0.05, toSec: at + 0.1 }]), gain: 1, lowMidi: 24, highMidi: 103 })
      .filter(({ probability }) => probability > 0.6);
  });

  it('is heard note by note, within 12 ms', () => {
    expect(heard.map(({ midi }) => midi).sort()).toEqual(struck.map(({ midi }) => midi).sort());
    for (const { midi, timeSec } of struck)
      expect(Math.abs(heard.find((note) => note.midi === midi)!.timeSec - timeSec)).toBeLessThan(0.012);
  });

  it('sounds on', () => {
    for (const { sounding } of heard) expect(sounding).toBeGreaterThan(0.5);
  });
});

function inTime(notes: readonly NetworkNote[]): NetworkNote[] {
  return [...notes].sort((a, b) => a.timeSec - b.timeSec || a.midi - b.midi);
}
