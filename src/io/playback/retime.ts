import { planPieces, type Piece } from './pieces.ts';
import type { Retiming } from './timemap.ts';

/** One piece passes into the next over this time, seconds: slowly enough to be no stroke. */
const JOIN_SEC = 0.04;
/**
 * How much of the choice of a piece before an attack is how well it leads there, 0..1. What cannot fit both ends fits what was:
 * the attack covers the other. Of 0.15 to 0.5, tried on 16 attempts with our own listener, 0.25 gave no note too many.
 */
const LEADING_SHARE = 0.25;
/** How far a piece may be moved to join in phase, seconds: more than a period of the lowest note of the exercises. */
const SEARCH_SEC = 0.016;
/** Starts are tried at every so many samples, and sounds compared at every so many: first coarsely, for speed, then closely. */
const COARSE = { start: 6, sample: 8 } as const;
const FINE = { start: 1, sample: 2 } as const;
/** What follows on as well as this is not looked for elsewhere: sound that keeps its time is copied as it is. */
const GOES_ON = 0.9999;

/**
 * Sound → the same sound with its attacks at other times, at the same pitch (WSOLA: Verhelst & Roelands 1993, between the
 * attacks, which stay whole). All channels move together. An attack lands on its place to half a sample.
 */
export function retime(
  channels: readonly Float32Array[],
  sampleRateHz: number,
  retiming: Retiming,
): Float32Array<ArrayBuffer>[] {
  const frames = channels[0]?.length ?? 0;
  const outFrames = Math.max(0, Math.round(retiming.lengthSec * sampleRateHz));
  const out = channels.map(() => new Float32Array(outFrames));
  if (frames === 0 || outFrames === 0) return out;
  const join = 2 * Math.round((JOIN_SEC * sampleRateHz) / 2);
  const search = Math.round(SEARCH_SEC * sampleRateHz);
  const pieces = planPieces(frames, outFrames, sampleRateHz, join, retiming);
  let shift = 0;
  pieces.forEach((piece, index) => {
    const next = pieces[index + 1];
    const follows = piece.at + shift;
    const from =
      piece.fixed || index === 0 ? piece.near : startOf(channels[0]!, follows, piece, next, search, join);
    const end = next === undefined ? outFrames : Math.min(outFrames, next.at + join / 2);
    copy(channels, out, index === 0 ? piece.at : piece.at + join / 2, end, from - piece.at);
    if (index > 0) joinUp(channels, out, piece.at, follows, from, join);
    shift = from - piece.at;
  });
  return out;
}

/** Sound from `start + shift` on → `start` … `end`. */
function copy(
  channels: readonly Float32Array[],
  out: readonly Float32Array[],
  start: number,
  end: number,
  shift: number,
): void {
  channels.forEach((channel, c) => {
    for (let i = start; i < end; i++) out[c]![i] = channel[i + shift] ?? 0;
  });
}

/**
 * About `at`, passes from what followed on to what comes now. What is alike adds up, what is not adds as powers do: without
 * the gain a join of unlike sounds would be a dip of 3 dB, and the rise out of it like a soft stroke.
 */
function joinUp(
  channels: readonly Float32Array[],
  out: readonly Float32Array[],
  at: number,
  follows: number,
  from: number,
  join: number,
): void {
  if (follows === from) return copy(channels, out, at - join / 2, at + join / 2, from - at);
  channels.forEach((channel, c) => {
    const alike = Math.max(0, likeness(channel, follows, from, join, 1));
    for (let i = Math.max(-join / 2, -at); i < join / 2 && at + i < out[c]!.length; i++) {
      const risen = 0.5 + 0.5 * Math.sin((Math.PI * (i + 0.5)) / join);
      const fallen = 1 - risen;
      const gain = 1 / Math.sqrt(risen ** 2 + fallen ** 2 + 2 * alike * risen * fallen);
      out[c]![at + i] = gain * (fallen * (channel[follows + i] ?? 0) + risen * (channel[from + i] ?? 0));
    }
  });
}

/**
 * Where a piece is copied from. As long as the sound may go on, it goes on: each join is a small fault. Otherwise from the
 * place near the wanted one whose sound is most like what would have gone on and, before an attack, whose end is most like what
 * leads to the attack.
 */
function startOf(
  sound: Float32Array,
  follows: number,
  piece: Piece,
  next: Piece | undefined,
  search: number,
  join: number,
): number {
  const beforeAttack = next?.fixed === true;
  const score = (start: number, step: number): number => {
    const behind = likeness(sound, start, follows, join, step);
    if (!beforeAttack) return behind;
    const ahead = likeness(sound, start + next.at - piece.at, next.near, join, step);
    return (1 - LEADING_SHARE) * behind + LEADING_SHARE * ahead;
  };
  // Where an attack is near, the whole room of the search moves away from it.
  const highest = Math.min(Math.max(piece.near, piece.earliest + search) + search, piece.latest);
  const lowest = Math.max(highest - 2 * search, Math.min(piece.earliest, highest));
  const mayGoOn = follows >= lowest && follows <= highest;
  if (mayGoOn && (!beforeAttack || score(follows, FINE.sample) > GOES_ON)) return follows;
  const best = (
    from: number,
    to: number,
    by: { readonly start: number; readonly sample: number },
  ): number => {
    let found = from;
    let most = -Infinity;
    for (let start = from; start <= to; start += by.start) {
      const value = score(start, by.sample);
      if (value > most) [found, most] = [start, value];
    }
    return found;
  };
  const rough = best(lowest, highest, COARSE);
  const from = Math.max(lowest, rough - COARSE.start + 1);
  return best(from, Math.min(highest, rough + COARSE.start - 1), FINE);
}

/** How alike the sound is about two places, over a join: correlation, −1 … 1. */
function likeness(sound: Float32Array, a: number, b: number, join: number, step: number): number {
  // Silence is like silence.
  let product = 1e-12;
  let energyA = 1e-12;
  let energyB = 1e-12;
  for (let i = -join / 2; i < join / 2; i += step) {
    const x = sound[a + i] ?? 0;
    const y = sound[b + i] ?? 0;
    product += x * y;
    energyA += x * x;
    energyB += y * y;
  }
  return product / Math.sqrt(energyA * energyB);
}
