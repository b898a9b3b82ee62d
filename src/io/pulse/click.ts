/** One damped tone of a click. */
interface Ring {
  readonly freqHz: number;
  /** to 1/e, seconds */
  readonly decaySec: number;
  readonly gain: number;
}

/**
 * Wood on wood: damped within a few milliseconds, so that nothing of it rings as a string does. The first beat of a group
 * is brighter and a little louder. Chosen because the network was trained with clicks of this kind; that they add no notes
 * to a report is tested (tests/io/pulse/click.test.ts).
 */
const PLAIN: readonly Ring[] = [
  { freqHz: 1800, decaySec: 0.006, gain: 0.42 },
  { freqHz: 3100, decaySec: 0.004, gain: 0.24 },
];
const FIRST: readonly Ring[] = [
  { freqHz: 2300, decaySec: 0.006, gain: 0.5 },
  { freqHz: 4000, decaySec: 0.004, gain: 0.3 },
];

/** How long a click lasts, seconds: ten times its slowest decay. */
export const CLICK_SEC = 0.06;

/** A click → its samples, −1..1. */
export function clickSamples(sampleRateHz: number, first: boolean): Float32Array<ArrayBuffer> {
  const rings = first ? FIRST : PLAIN;
  return Float32Array.from({ length: Math.round(CLICK_SEC * sampleRateHz) }, (_, index) => {
    const sec = index / sampleRateHz;
    return rings.reduce(
      (sum, { freqHz, decaySec, gain }) =>
        sum + gain * Math.exp(-sec / decaySec) * Math.sin(2 * Math.PI * freqHz * sec),
      0,
    );
  });
}
