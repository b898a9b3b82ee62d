// AssemblyScript (not TypeScript: hence the ending). Build: `node build.mjs` beside this file.
// Whole-number arithmetic: int16 values, int32 sums. plain.ts says the same in TypeScript, to the last bit.

// Rounds sums of 8 channels back to int16.
// @ts-ignore: decorator
@inline
function rounded(low: v128, high: v128, shift: i32): v128 {
  const half = i32x4.splat(1 << (shift - 1));
  return i16x8.narrow_i32x4_s(
    i32x4.shr_s(i32x4.add(low, half), shift),
    i32x4.shr_s(i32x4.add(high, half), shift),
  );
}

// Writes them, no less than `least`; mode 2: added to what stands there.
// @ts-ignore: decorator
@inline
function put(out: usize, low: v128, high: v128, shift: i32, mode: i32, least: v128): void {
  let value = i16x8.max_s(rounded(low, high, shift), least);
  if (mode > 1) value = i16x8.add_sat_s(value, v128.load(out));
  v128.store(out, value);
}

// Positions in fours, outputs in eights. For each position: sum over pairs of two neighbouring inputs each, found at
// `offsets` from the position, and its biases and those that all positions share. Weights: [output / 8][pair][8 outputs][2].
export function multiply(
  input: usize, inputStride: usize, offsets: usize, pairs: i32,
  weights: usize, bias: usize, biasStride: usize, shared: usize,
  output: usize, outputStride: usize,
  positions: i32, outputs: i32, shift: i32, mode: i32,
): void {
  const end = offsets + ((<usize>pairs) << 2);
  const least = i16x8.splat(mode > 0 ? 0 : -32768);
  for (let first = 0; first < outputs; first += 8) {
    let at = input;
    let out = output + ((<usize>first) << 1);
    let base = bias + ((<usize>first) << 2);
    const sa = v128.load(shared), sb = v128.load(shared, 16);
    shared += 32;
    for (let position = 0; position < positions; position += 4) {
      let a0 = i32x4.add(sa, v128.load(base)), b0 = i32x4.add(sb, v128.load(base, 16));
      base += biasStride;
      let a1 = i32x4.add(sa, v128.load(base)), b1 = i32x4.add(sb, v128.load(base, 16));
      base += biasStride;
      let a2 = i32x4.add(sa, v128.load(base)), b2 = i32x4.add(sb, v128.load(base, 16));
      base += biasStride;
      let a3 = i32x4.add(sa, v128.load(base)), b3 = i32x4.add(sb, v128.load(base, 16));
      base += biasStride;
      let weight = weights;
      for (let offset = offsets; offset < end; offset += 4) {
        const low = v128.load(weight), high = v128.load(weight, 16);
        weight += 32;
        let from = at + <usize>load<i32>(offset);
        const x0 = v128.load32_splat(from);
        a0 = i32x4.add(a0, i32x4.dot_i16x8_s(low, x0));
        b0 = i32x4.add(b0, i32x4.dot_i16x8_s(high, x0));
        const x1 = v128.load32_splat(from + inputStride);
        a1 = i32x4.add(a1, i32x4.dot_i16x8_s(low, x1));
        b1 = i32x4.add(b1, i32x4.dot_i16x8_s(high, x1));
        from += inputStride << 1;
        const x2 = v128.load32_splat(from);
        a2 = i32x4.add(a2, i32x4.dot_i16x8_s(low, x2));
        b2 = i32x4.add(b2, i32x4.dot_i16x8_s(high, x2));
        const x3 = v128.load32_splat(from + inputStride);
        a3 = i32x4.add(a3, i32x4.dot_i16x8_s(low, x3));
        b3 = i32x4.add(b3, i32x4.dot_i16x8_s(high, x3));
      }
      put(out, a0, b0, shift, mode, least);
      out += outputStride;
      put(out, a1, b1, shift, mode, least);
      out += outputStride;
      put(out, a2, b2, shift, mode, least);
      out += outputStride;
      put(out, a3, b3, shift, mode, least);
      out += outputStride;
      at += inputStride << 2;
    }
    weights += (<usize>pairs) << 5;
  }
}

// @ts-ignore: decorator
@inline
function low(a: v128, b: v128): v128 {
  return v128.shuffle<i16>(a, b, 0, 8, 1, 9, 2, 10, 3, 11);
}

// @ts-ignore: decorator
@inline
function high(a: v128, b: v128): v128 {
  return v128.shuffle<i16>(a, b, 4, 12, 5, 13, 6, 14, 7, 15);
}

// Each channel for itself: the sum over `taps` rows (an even number), whose addresses stand in `rows`.
// Weights: [channel / 8][pair of taps][8 channels][2].
export function smear(
  rows: usize, taps: i32, weights: usize, output: usize, outputStride: usize,
  positions: i32, channels: i32, shift: i32,
): void {
  const stride = (<usize>channels) << 1;
  const end = rows + ((<usize>taps) << 2);
  for (let channel: usize = 0; channel < stride; channel += 16) {
    let at = channel;
    let out = output + channel;
    for (let position = 0; position < positions; position += 2) {
      let a0 = i32x4.splat(0), b0 = i32x4.splat(0), a1 = i32x4.splat(0), b1 = i32x4.splat(0);
      let weight = weights;
      for (let row = rows; row < end; row += 8) {
        const wa = v128.load(weight), wb = v128.load(weight, 16);
        weight += 32;
        const first = at + <usize>load<i32>(row), second = at + <usize>load<i32>(row, 4);
        let x = v128.load(first), y = v128.load(second);
        a0 = i32x4.add(a0, i32x4.dot_i16x8_s(wa, low(x, y)));
        b0 = i32x4.add(b0, i32x4.dot_i16x8_s(wb, high(x, y)));
        x = v128.load(first + stride);
        y = v128.load(second + stride);
        a1 = i32x4.add(a1, i32x4.dot_i16x8_s(wa, low(x, y)));
        b1 = i32x4.add(b1, i32x4.dot_i16x8_s(wb, high(x, y)));
      }
      v128.store(out, rounded(a0, b0, shift));
      v128.store(out + outputStride, rounded(a1, b1, shift));
      at += stride << 1;
      out += outputStride << 1;
    }
    weights += (<usize>taps) << 4;
  }
}

// `size` samples times a window → size / 2 powers. As a complex transform of half the length over pairs of samples
// (Stockham's autosort, radix 4, with one last pass of radix 2 where size / 2 = 2 · 4ⁿ), then parted into the real one.
// `turns`: for p < size / 8 the cosines and sines of −2π p / (size / 2) and of its double and treble, six rows.
// `split`: cosines, then sines of −2π k / size. `work`: four rows of size / 2 + 4.
export function spectrum(
  samples: usize, size: i32, window: usize, turns: usize, split: usize, work: usize, output: usize,
): void {
  const count = size >> 1;
  const row = (<usize>(count + 4)) << 2;
  let x = work, y = work + 2 * row;
  const bytes = (<usize>count) << 2;
  for (let at: usize = 0; at < bytes; at += 16) {
    const left = f32x4.mul(v128.load(samples + 2 * at), v128.load(window + 2 * at));
    const right = f32x4.mul(v128.load(samples + 2 * at, 16), v128.load(window + 2 * at, 16));
    v128.store(x + at, v128.shuffle<i32>(left, right, 0, 2, 4, 6));
    v128.store(x + row + at, v128.shuffle<i32>(left, right, 1, 3, 5, 7));
  }
  firstPass(x, y, row, count, turns);
  let swap = x; x = y; y = swap;
  let stride = 4;
  for (; stride < count >> 1; stride <<= 2) {
    pass(x, y, row, count, stride, turns);
    swap = x; x = y; y = swap;
  }
  const half = bytes >> 1;
  if (stride < count) {
    for (let at: usize = 0; at < half; at += 16) {
      for (let part: usize = 0; part <= row; part += row) {
        const here = x + part + at;
        const a = v128.load(here), b = v128.load(here + half);
        v128.store(here, f32x4.add(a, b));
        v128.store(here + half, f32x4.sub(a, b));
      }
    }
  }
  store<f32>(x + bytes, load<f32>(x));
  store<f32>(x + row + bytes, load<f32>(x + row));
  const quarter = f32x4.splat(0.25);
  for (let at: usize = 0; at < bytes; at += 16) {
    const opposite = x + bytes - at - 12;
    const zr = v128.load(x + at), zi = v128.load(x + row + at);
    const backR = v128.load(opposite), backI = v128.load(opposite + row);
    const yr = v128.shuffle<i32>(backR, backR, 3, 2, 1, 0), yi = v128.shuffle<i32>(backI, backI, 3, 2, 1, 0);
    const er = f32x4.add(zr, yr), ei = f32x4.sub(zi, yi);
    const or = f32x4.add(zi, yi), oi = f32x4.sub(yr, zr);
    const wr = v128.load(split + at), wi = v128.load(split + bytes + at);
    const re = f32x4.add(er, f32x4.sub(f32x4.mul(wr, or), f32x4.mul(wi, oi)));
    const im = f32x4.add(ei, f32x4.add(f32x4.mul(wr, oi), f32x4.mul(wi, or)));
    v128.store(output + at, f32x4.mul(quarter, f32x4.add(f32x4.mul(re, re), f32x4.mul(im, im))));
  }
}

// Stride 1: four neighbouring p at once, their four results woven together.
function firstPass(x: usize, y: usize, row: usize, count: i32, turns: usize): void {
  const quarter = (<usize>count) & ~3;
  for (let at: usize = 0; at < quarter; at += 16) {
    const w = turns + at;
    const ar = v128.load(x + at), ai = v128.load(x + row + at);
    const br = v128.load(x + quarter + at), bi = v128.load(x + row + quarter + at);
    const cr = v128.load(x + 2 * quarter + at), ci = v128.load(x + row + 2 * quarter + at);
    const dr = v128.load(x + 3 * quarter + at), di = v128.load(x + row + 3 * quarter + at);
    const pr = f32x4.add(ar, cr), pi = f32x4.add(ai, ci), mr = f32x4.sub(ar, cr), mi = f32x4.sub(ai, ci);
    const qr = f32x4.add(br, dr), qi = f32x4.add(bi, di), nr = f32x4.sub(br, dr), ni = f32x4.sub(bi, di);
    const r1 = f32x4.add(mr, ni), i1 = f32x4.sub(mi, nr);
    const r2 = f32x4.sub(pr, qr), i2 = f32x4.sub(pi, qi);
    const r3 = f32x4.sub(mr, ni), i3 = f32x4.add(mi, nr);
    const c1 = v128.load(w), s1 = v128.load(w + quarter);
    const c2 = v128.load(w + 2 * quarter), s2 = v128.load(w + 3 * quarter);
    const c3 = v128.load(w + 4 * quarter), s3 = v128.load(w + 5 * quarter);
    weave(
      y + 4 * at, f32x4.add(pr, qr),
      f32x4.sub(f32x4.mul(c1, r1), f32x4.mul(s1, i1)),
      f32x4.sub(f32x4.mul(c2, r2), f32x4.mul(s2, i2)),
      f32x4.sub(f32x4.mul(c3, r3), f32x4.mul(s3, i3)),
    );
    weave(
      y + row + 4 * at, f32x4.add(pi, qi),
      f32x4.add(f32x4.mul(c1, i1), f32x4.mul(s1, r1)),
      f32x4.add(f32x4.mul(c2, i2), f32x4.mul(s2, r2)),
      f32x4.add(f32x4.mul(c3, i3), f32x4.mul(s3, r3)),
    );
  }
}

// @ts-ignore: decorator
@inline
function weave(out: usize, a: v128, b: v128, c: v128, d: v128): void {
  const ab0 = v128.shuffle<i32>(a, b, 0, 4, 1, 5), ab1 = v128.shuffle<i32>(a, b, 2, 6, 3, 7);
  const cd0 = v128.shuffle<i32>(c, d, 0, 4, 1, 5), cd1 = v128.shuffle<i32>(c, d, 2, 6, 3, 7);
  v128.store(out, v128.shuffle<i64>(ab0, cd0, 0, 2));
  v128.store(out, v128.shuffle<i64>(ab0, cd0, 1, 3), 16);
  v128.store(out, v128.shuffle<i64>(ab1, cd1, 0, 2), 32);
  v128.store(out, v128.shuffle<i64>(ab1, cd1, 1, 3), 48);
}

function pass(x: usize, y: usize, row: usize, count: i32, stride: i32, turns: usize): void {
  const quarter = (<usize>count) & ~3;
  const step = (<usize>stride) << 2;
  let from = x, to = y;
  for (let turn: usize = 0; turn < quarter; turn += step) {
    const w = turns + turn;
    const c1 = v128.load32_splat(w), s1 = v128.load32_splat(w + quarter);
    const c2 = v128.load32_splat(w + 2 * quarter), s2 = v128.load32_splat(w + 3 * quarter);
    const c3 = v128.load32_splat(w + 4 * quarter), s3 = v128.load32_splat(w + 5 * quarter);
    const end = from + step;
    while (from < end) {
      const ar = v128.load(from), ai = v128.load(from + row);
      const br = v128.load(from + quarter), bi = v128.load(from + row + quarter);
      const cr = v128.load(from + 2 * quarter), ci = v128.load(from + row + 2 * quarter);
      const dr = v128.load(from + 3 * quarter), di = v128.load(from + row + 3 * quarter);
      const pr = f32x4.add(ar, cr), pi = f32x4.add(ai, ci), mr = f32x4.sub(ar, cr), mi = f32x4.sub(ai, ci);
      const qr = f32x4.add(br, dr), qi = f32x4.add(bi, di), nr = f32x4.sub(br, dr), ni = f32x4.sub(bi, di);
      v128.store(to, f32x4.add(pr, qr));
      v128.store(to + row, f32x4.add(pi, qi));
      let r = f32x4.add(mr, ni), i = f32x4.sub(mi, nr);
      v128.store(to + step, f32x4.sub(f32x4.mul(c1, r), f32x4.mul(s1, i)));
      v128.store(to + row + step, f32x4.add(f32x4.mul(c1, i), f32x4.mul(s1, r)));
      r = f32x4.sub(pr, qr); i = f32x4.sub(pi, qi);
      v128.store(to + 2 * step, f32x4.sub(f32x4.mul(c2, r), f32x4.mul(s2, i)));
      v128.store(to + row + 2 * step, f32x4.add(f32x4.mul(c2, i), f32x4.mul(s2, r)));
      r = f32x4.sub(mr, ni); i = f32x4.add(mi, nr);
      v128.store(to + 3 * step, f32x4.sub(f32x4.mul(c3, r), f32x4.mul(s3, i)));
      v128.store(to + row + 3 * step, f32x4.add(f32x4.mul(c3, i), f32x4.mul(s3, r)));
      from += 16;
      to += 16;
    }
    to += 3 * step;
  }
}

// Powers → logarithms of weighted sums: for each of `count` (a multiple of 4) log bins `table` holds the byte offset of
// its first power and the number of fours of weights. Writes round(slope · log2(sum · gain + floor) + rise) as int16,
// `stride` bytes apart.
export function collect(
  power: usize, table: usize, weights: usize, count: i32, gain: f32, floor: f32, slope: f32, rise: f32,
  output: usize, stride: usize,
): void {
  let sums = f32x4.splat(0);
  let weight = weights;
  for (let bin = 0; bin < count; bin++) {
    let from = power + <usize>load<i32>(table);
    const end = weight + ((<usize>load<i32>(table, 4)) << 4);
    table += 8;
    let four = f32x4.splat(0);
    while (weight < end) {
      four = f32x4.add(four, f32x4.mul(v128.load(from), v128.load(weight)));
      from += 16;
      weight += 16;
    }
    four = f32x4.add(four, v128.shuffle<i32>(four, four, 2, 3, 0, 1));
    four = f32x4.add(four, v128.shuffle<i32>(four, four, 1, 0, 3, 2));
    sums = v128.shuffle<i32>(sums, four, 1, 2, 3, 4);
    if ((bin & 3) !== 3) continue;
    const value = f32x4.add(f32x4.mul(sums, f32x4.splat(gain)), f32x4.splat(floor));
    const exponent = f32x4.convert_i32x4_s(i32x4.sub(i32x4.shr_s(value, 23), i32x4.splat(127)));
    const t = f32x4.sub(
      v128.or(v128.and(value, i32x4.splat(0x7fffff)), i32x4.splat(0x3f800000)),
      f32x4.splat(1),
    );
    // log2(1 + t) for 0 ≤ t < 1: least squares at Chebyshev's points, within 3 · 10⁻⁶
    let log = f32x4.splat(-0.0251232033);
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(0.119298238));
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(-0.274623258));
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(0.455527088));
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(-0.717557872));
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(1.44247531));
    log = f32x4.add(f32x4.mul(log, t), f32x4.splat(2.12374089e-06));
    const scaled = f32x4.add(f32x4.mul(f32x4.add(log, exponent), f32x4.splat(slope)), f32x4.splat(rise));
    const whole = i32x4.trunc_sat_f32x4_s(f32x4.nearest(scaled));
    v128.store_lane<i16>(output, whole, 0);
    v128.store_lane<i16>(output + stride, whole, 2);
    v128.store_lane<i16>(output + 2 * stride, whole, 4);
    v128.store_lane<i16>(output + 3 * stride, whole, 6);
    output += 4 * stride;
  }
}
