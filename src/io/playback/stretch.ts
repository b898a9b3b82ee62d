/** Length of the pieces that are laid anew, seconds: several periods of the lowest strings, shorter than a fast note. */
const PIECE_SEC = 0.06;
/** How far a piece may be moved to join in phase, seconds: more than a period of the lowest note of the exercises. */
const SEARCH_SEC = 0.012;
/** Every how many samples the join is judged: coarse, for speed. */
const JUDGE_STEP = 4;

/**
 * Sound → the same sound at another speed and the same pitch: pieces half overlapping, each taken from where it goes on
 * best from the last (WSOLA: Verhelst & Roelands 1993). All channels move together. Speed 1 gives the sound itself.
 */
export function stretch(
  channels: readonly Float32Array<ArrayBuffer>[],
  sampleRateHz: number,
  speed: number,
): Float32Array<ArrayBuffer>[] {
  const frames = channels[0]?.length ?? 0;
  const hop = Math.round((PIECE_SEC * sampleRateHz) / 2);
  if (speed === 1 || frames <= 2 * hop) return channels.map((channel) => channel.slice());
  const search = Math.round(SEARCH_SEC * sampleRateHz);
  const outFrames = Math.round(frames / speed);
  const out = channels.map(() => new Float32Array(outFrames));
  const window = Float32Array.from({ length: 2 * hop }, (_, i) => 0.5 - 0.5 * Math.cos((Math.PI * i) / hop));
  const last = frames - 2 * hop;
  // The very first piece rises from full strength: there is nothing before it to overlap with.
  let taken = -hop;
  for (let at = 0; at < outFrames; at += hop) {
    const wanted = Math.min(Math.round(at * speed), last);
    taken = at === 0 ? 0 : bestJoin(channels[0]!, taken + hop, wanted, search, hop, last);
    channels.forEach((channel, c) => {
      const to = Math.min(2 * hop, outFrames - at);
      for (let i = 0; i < to; i++) {
        out[c]![at + i]! += channel[taken + i]! * (at === 0 && i < hop ? 1 : window[i]!);
      }
    });
  }
  return out;
}

/** The start within ±search of `wanted` whose sound is most like what would have followed (at `follows`). */
function bestJoin(
  sound: Float32Array,
  follows: number,
  wanted: number,
  search: number,
  hop: number,
  last: number,
): number {
  let best = Math.max(wanted, 0);
  let bestScore = -Infinity;
  for (let start = Math.max(wanted - search, 0); start <= Math.min(wanted + search, last); start++) {
    let product = 0;
    let energy = 1e-9;
    for (let i = 0; i < hop; i += JUDGE_STEP) {
      const value = sound[start + i]!;
      product += value * (sound[follows + i] ?? 0);
      energy += value * value;
    }
    const score = product / Math.sqrt(energy);
    if (score > bestScore) {
      bestScore = score;
      best = start;
    }
  }
  return best;
}
