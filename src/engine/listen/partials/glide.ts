import { peakOffset } from '../../base/parabola.ts';
import { hann } from '../../base/windows.ts';
import { RATE_HZ } from '../audio/index.ts';
import { windowedPower } from './power.ts';
import { partialsOf } from './probe.ts';
import { typicalStiffness } from './stiffness.ts';

/*
 * A struck string keeps its pitch, a voice does not, and takes all its partials along. One partial seems to move wherever another key's lies
 * beside it; three that move by as much are one voice.
 */

const FFT_SIZE = 8192;
const BIN_HZ = RATE_HZ / FFT_SIZE;
/** two looks of 70 ms, past the knock, and 93 ms apart, samples */
const LENGTH = 1536;
const AFTER_KNOCK = 110;
const APART = 2048;
/** the strongest partials, so many, and how far from its place each is looked for, cents */
const PARTIALS = 3;
const REACH_CENTS = 60;
/**
 * They move as one by more than a struck string does, and within so much of each other, cents. Development piano: of 1220 keys struck (lines
 * and chords of one hand, 380 beside a voice as loud) none does; of 175 that a voice was taken for with a belief of over 0.9, 13.
 */
const LEAST_CENTS = 10;
const ALIKE_CENTS = 10;

/** One channel at RATE_HZ, an onset, s, and where its first partial lies, fractional MIDI → whether the tone's partials glide together. */
export function glidesAsOne(samples: Float32Array, onsetSec: number, pitch: number): boolean {
  const start = Math.round(onsetSec * RATE_HZ) + AFTER_KNOCK;
  const placesHz = partialsOf(pitch, typicalStiffness(pitch));
  const first = linesIn(samples, start, placesHz);
  const later = linesIn(samples, start + APART, placesHz);
  const moved = first
    .map(({ freqHz, power }, at) => ({ cents: movedCents(freqHz, later[at]!.freqHz), power }))
    .sort((a, b) => b.power - a.power)
    .slice(0, PARTIALS)
    .flatMap(({ cents }) => cents ?? []);
  const least = Math.min(...moved);
  const most = Math.max(...moved);
  const isTogether = moved.length === PARTIALS && most - least <= ALIKE_CENTS;
  return isTogether && Math.abs(moved.sort((a, b) => a - b)[1]!) >= LEAST_CENTS;
}

interface Line {
  /** null: what is strongest there is the flank of something outside */
  readonly freqHz: number | null;
  readonly power: number;
}

function linesIn(samples: Float32Array, start: number, placesHz: readonly number[]): readonly Line[] {
  const spectrum = windowedPower(FFT_SIZE);
  const powers = new Float32Array(FFT_SIZE / 2);
  const piece = Float64Array.from({ length: LENGTH }, (_, at) => samples[start + at] ?? 0);
  spectrum.measure(
    piece,
    spectrum.window(`glide ${LENGTH}`, () => hann(LENGTH)),
    powers,
  );
  const ratio = 2 ** (REACH_CENTS / 1200);
  return placesHz.map((placeHz) => {
    const from = Math.round(placeHz / ratio / BIN_HZ);
    const to = Math.round((placeHz * ratio) / BIN_HZ);
    let at = from;
    for (let bin = from; bin <= to; bin++) if (powers[bin]! > powers[at]!) at = bin;
    const isOwn = at > from && at < to;
    return { freqHz: isOwn ? (at + peakOffset(powers, at)) * BIN_HZ : null, power: powers[at]! };
  });
}

function movedCents(fromHz: number | null, toHz: number | null): number | null {
  return fromHz === null || toHz === null ? null : 1200 * Math.log2(toHz / fromHz);
}
