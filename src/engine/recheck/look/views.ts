import { RATE_HZ } from '../../listen/audio/index.ts';
import type { Sums } from '../../sums/index.ts';
import { STRIPS } from './strips.ts';

/** One way of looking along time: windows of `size` samples every `hop`, the first centred `first` samples from the moment. */
export interface LookView {
  readonly size: number;
  readonly first: number;
  readonly hop: number;
  readonly frames: number;
}

/** Sharp in pitch, between, sharp in time, and what lasts of a held note (beats and decay); as trained. */
export const VIEWS: readonly LookView[] = [
  { size: 4096, first: -3072, hop: 1024, frames: 8 },
  { size: 1024, first: -1536, hop: 256, frames: 19 },
  { size: 256, first: -1280, hop: 128, frames: 26 },
  { size: 4096, first: 6144, hop: 2048, frames: 5 },
];
/** The view of what lasts has the long one's windows. */
export const HELD = 3;
/** It ends where the next step is nearer than so many samples to a frame's middle. */
const CLEAR = 1024;

/** Frames of the view of what lasts that the next step, `untilSec` later, does not reach into. */
export function heldFrames(untilSec: number): number {
  const { first, hop, frames } = VIEWS[HELD]!;
  const clear = Math.floor((untilSec * RATE_HZ - CLEAR - first) / hop) + 1;
  return Math.max(0, Math.min(frames, clear));
}

/** A window spans at most so many samples over the frequency in Hz: then half its lobe is 2 % of the frequency. */
const WIDTH = 2.2e6;
/** Nothing is looked at above this, Hz. */
const TOP_HZ = 10_000;
const FLOOR = 1e-9;
const UNSEEN = -2.5;

const BYTES = Float32Array.BYTES_PER_ELEMENT;

/** Half a Hann window times a cosine and a sine, from its centre on: addresses in a memory. The window is even, so half is enough. */
export interface HalfWindow {
  readonly cosines: number;
  readonly sines: number;
  /** numbers in each, a multiple of 4 */
  readonly count: number;
}

/**
 * Frequencies → the windows of one view for them, put into the memory; null above what is looked at. Scaled so that a sine's power is
 * its squared amplitude.
 */
export function windowsFor(
  sums: Sums,
  view: LookView,
  freqsHz: readonly number[],
): readonly (HalfWindow | null)[] {
  return freqsHz.map((freqHz) => {
    if (freqHz >= TOP_HZ) return null;
    const span = Math.min(view.size, WIDTH / freqHz);
    // It reaches to just short of half its span on each side.
    const reach = Math.min(Math.ceil(span / 2) - 1, view.size / 2 - 1);
    const count = 4 * Math.ceil((reach + 1) / 4);
    const cosines = sums.reserve(2 * count * BYTES);
    const values = new Float32Array(sums.memory, cosines, 2 * count);
    const step = (2 * Math.PI * freqHz) / RATE_HZ;
    const [turnCos, turnSin] = [Math.cos(step), Math.sin(step)];
    const bend = (2 * Math.PI) / span;
    const [bendCos, bendSin] = [Math.cos(bend), Math.sin(bend)];
    let [cos, sin, hannCos, hannSin] = [1, 0, 1, 0];
    for (let m = 0; m <= reach; m++) {
      const weight = ((0.5 + 0.5 * hannCos) * 4) / span;
      values[m] = weight * cos;
      values[count + m] = weight * sin;
      const [lastCos, lastHann] = [cos, hannCos];
      cos = cos * turnCos - sin * turnSin;
      sin = sin * turnCos + lastCos * turnSin;
      hannCos = hannCos * bendCos - hannSin * bendSin;
      hannSin = hannSin * bendCos + lastHann * bendSin;
    }
    return { cosines, sines: cosines + count * BYTES, count };
  });
}

/** Room in a memory for one view: the sound, folded about each frame's centre, and the powers that are seen. */
export interface ViewRoom {
  readonly sound: number;
  readonly even: number;
  readonly odd: number;
  readonly powers: number;
}

/** Room enough for every view, one after the other. */
export function roomFor(sums: Sums): ViewRoom {
  const most = (of: (view: LookView) => number): number => BYTES * Math.max(...VIEWS.map(of));
  const folded = most(({ frames, size }) => (frames * size) / 2);
  return {
    sound: sums.reserve(most(({ frames, hop, size }) => frames * hop + size)),
    even: sums.reserve(folded),
    odd: sums.reserve(folded),
    powers: sums.reserve(most(({ frames }) => frames * STRIPS)),
  };
}

/**
 * Samples at RATE_HZ → what one view shows at each frequency: frames × frequencies, frame by frame. A level of 0 is −40 dB, 2 a
 * sine of full scale. Samples outside the sound count as silence. `wanted`: frames that are looked at; the rest is 0.
 */
export function lookThrough(
  sums: Sums,
  room: ViewRoom,
  view: LookView,
  samples: Float32Array,
  centre: number,
  gain: number,
  windows: readonly (HalfWindow | null)[],
  wanted: { readonly from: number; readonly to: number } = { from: 0, to: view.frames },
): Float32Array {
  const { size, first, hop } = view;
  const { sound, even, odd, powers } = room;
  const half = size / 2;
  const strips = windows.length;
  const seen = new Float32Array(view.frames * strips);
  const frames = wanted.to - wanted.from;
  if (frames <= 0) return seen;
  const length = (frames - 1) * hop + size;
  copy(samples, centre + first + wanted.from * hop - half, new Float32Array(sums.memory, sound, length));
  sums.fold({ centre: sound + half * BYTES, hop: hop * BYTES, half, even, odd }, frames);
  windows.forEach((window, strip) => {
    if (window === null) return;
    const { cosines, sines, count } = window;
    const [row, output, stride] = [half * BYTES, powers + strip * BYTES, strips * BYTES];
    sums.project({ even, odd, row, cosines, sines, length: count, output, stride }, frames);
  });
  const power = new Float32Array(sums.memory, powers, frames * strips);
  for (let strip = 0; strip < strips; strip++) {
    const isSeen = windows[strip] !== null;
    for (let at = strip, to = wanted.from * strips + strip; at < power.length; at += strips, to += strips)
      seen[to] = isSeen ? (Math.log10(power[at]! * gain * gain + FLOOR) + 4) / 2 : UNSEEN;
  }
  return seen;
}

/** Samples from an index on, which may lie outside the sound, fill `out`. */
function copy(samples: Float32Array, start: number, out: Float32Array): void {
  const from = Math.min(Math.max(-start, 0), out.length);
  const to = Math.max(Math.min(samples.length - start, out.length), from);
  out.fill(0, 0, from);
  out.set(samples.subarray(start + from, start + to), from);
  out.fill(0, to);
}
