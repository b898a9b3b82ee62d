import { fft } from '../fft.ts';

/** A sample's own tuning. */
export interface StringTuning {
  /** frequency of the first partial, Hz */
  readonly firstPartialHz: number;
  /** inharmonicity B of f_n = n·f0·sqrt(1 + B·n²) (Fletcher 1964) */
  readonly inharmonicity: number;
}

/** Inharmonicity along the keyboard (Rigaud, David & Daudet 2013; coefficients from memory): where to look for partials. */
export function typicalInharmonicity(midi: number): number {
  return Math.exp(0.0926 * midi - 13.64) + Math.exp(-0.0847 * midi - 5.82);
}

const MOST_PARTIALS = 10;
const SEARCH_CENTS = 70;
const HIGHEST_HZ = 9000;

/** Of the sound after the attack; the bass needs longer to tell its partials apart. */
const LOOK_SEC = { bass: 2.5, above: 1.2 };
const FIRST_KEY_ABOVE = 48;

/**
 * Samples of one key → its tuning, by one long Hann-windowed spectrum from 40 ms after the attack whose peaks are
 * refined by a parabola in dB and fitted by (f_n / n)² = f0² + f0²·B·n². The weight is the root of the amplitude, so that
 * one partial that soundboard or beating strings pull aside does not decide: in both pianos the partials of one key
 * disagree by up to 4 cents. The tuning of a key is that of the fitted string's first partial, f0·sqrt(1 + B).
 */
export function measureTuning(
  samples: Float32Array,
  sampleRateHz: number,
  midi: number,
  attackSec: number,
): StringTuning {
  const expectedHz = 440 * 2 ** ((midi - 69) / 12);
  const from = Math.round((attackSec + 0.04) * sampleRateHz);
  const length = Math.min(
    samples.length - from,
    Math.round(sampleRateHz * (midi < FIRST_KEY_ABOVE ? LOOK_SEC.bass : LOOK_SEC.above)),
  );
  const size = 2 ** Math.ceil(Math.log2(length * 2));
  const real = new Float64Array(size);
  for (let index = 0; index < length; index++)
    real[index] = samples[from + index]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * (index + 0.5)) / length));
  const imaginary = new Float64Array(size);
  fft(real, imaginary);
  const power = (bin: number): number => Math.log(real[bin]! ** 2 + imaginary[bin]! ** 2 + 1e-30);

  const typical = typicalInharmonicity(midi);
  const partials: { n: number; freqHz: number; weight: number }[] = [];
  let ratio = 1;
  for (let n = 1; n <= MOST_PARTIALS; n++) {
    const centreHz = n * expectedHz * Math.sqrt((1 + typical * n * n) / (1 + typical)) * ratio;
    if (centreHz > Math.min(HIGHEST_HZ, sampleRateHz * 0.45)) break;
    const span = 2 ** (SEARCH_CENTS / 1200);
    let best = Math.round((centreHz / span / sampleRateHz) * size);
    for (let bin = best; bin <= (centreHz * span * size) / sampleRateHz; bin++)
      if (power(bin) > power(best)) best = bin;
    const [left, middle, right] = [power(best - 1), power(best), power(best + 1)];
    const shift = (left - right) / (2 * (left - 2 * middle + right));
    const freqHz = ((best + (Math.abs(shift) < 1 ? shift : 0)) / size) * sampleRateHz;
    partials.push({ n, freqHz, weight: Math.exp(middle / 4) });
    if (n === 1) ratio = freqHz / centreHz;
  }
  return fitted(partials);
}

function fitted(partials: readonly { n: number; freqHz: number; weight: number }[]): StringTuning {
  let kept = partials;
  let fit: StringTuning = { firstPartialHz: partials[0]!.freqHz, inharmonicity: 0 };
  for (let round = 0; round < 3 && kept.length > 2; round++) {
    let [w, x, y, xx, xy] = [0, 0, 0, 0, 0];
    for (const { n, freqHz, weight } of kept) {
      const square = (freqHz / n) ** 2;
      w += weight;
      x += weight * n * n;
      y += weight * square;
      xx += weight * n ** 4;
      xy += weight * n * n * square;
    }
    const slope = (w * xy - x * y) / (w * xx - x * x);
    const intercept = (y - slope * x) / w;
    fit = { firstPartialHz: Math.sqrt(intercept + slope), inharmonicity: slope / intercept };
    kept = kept.filter(({ n, freqHz }) => {
      const predicted = n * Math.sqrt(intercept + slope * n * n);
      return Math.abs(1200 * Math.log2(freqHz / predicted)) < 4;
    });
  }
  return fit;
}
