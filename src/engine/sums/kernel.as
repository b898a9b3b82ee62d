// AssemblyScript (not TypeScript: hence the ending). Build: `node ../listen/network/kernel/build.mjs .` from this folder.
// plain.ts says the same in TypeScript: `dots` to the last bit, the others but for rounding.

// For each of `count` pairs of addresses in `places`: the sum of products of two rows of `length` float64 (a multiple of 4), in
// four sums that are then added in order.
export function dots(places: usize, count: i32, length: i32, out: usize): void {
  const end = places + ((<usize>count) << 3);
  const bytes = (<usize>length) << 3;
  for (; places < end; places += 8) {
    let a = <usize>load<i32>(places), b = <usize>load<i32>(places, 4);
    const stop = a + bytes;
    let low = f64x2.splat(0), high = f64x2.splat(0);
    while (a < stop) {
      low = f64x2.add(low, f64x2.mul(v128.load(a), v128.load(b)));
      high = f64x2.add(high, f64x2.mul(v128.load(a, 16), v128.load(b, 16)));
      a += 32;
      b += 32;
    }
    store<f64>(
      out,
      f64x2.extract_lane(low, 0) + f64x2.extract_lane(low, 1) + f64x2.extract_lane(high, 0) +
        f64x2.extract_lane(high, 1),
    );
    out += 8;
  }
}

// Sums and differences of the samples (float32) on both sides of a frame's centre, `half` of each (a multiple of 4); the centre
// itself counts once.
export function fold(centre: usize, hop: usize, frames: i32, half: i32, even: usize, odd: usize): void {
  const bytes = (<usize>half) << 2;
  for (let frame = 0; frame < frames; frame++) {
    for (let at: usize = 0; at < bytes; at += 16) {
      const after = v128.load(centre + at);
      const back = v128.load(centre - at - 12);
      const before = v128.shuffle<i32>(back, back, 3, 2, 1, 0);
      v128.store(even + at, f32x4.add(after, before));
      v128.store(odd + at, f32x4.sub(after, before));
    }
    store<f32>(even, load<f32>(centre));
    centre += hop;
    even += bytes;
    odd += bytes;
  }
}

// @ts-ignore: decorator
@inline
function total(four: v128): f32 {
  const two = f32x4.add(four, v128.shuffle<i32>(four, four, 2, 3, 0, 1));
  return f32x4.extract_lane(two, 0) + f32x4.extract_lane(two, 1);
}

// For each frame the squared length of (even · cosines, odd · sines), float32, `length` numbers (a multiple of 4) of rows that
// stand `row` bytes apart; results `stride` bytes apart.
export function project(
  even: usize, odd: usize, row: usize, frames: i32,
  cosines: usize, sines: usize, length: i32, out: usize, stride: usize,
): void {
  const bytes = (<usize>length) << 2;
  for (let frame = 0; frame < frames; frame++) {
    let real0 = f32x4.splat(0), real1 = f32x4.splat(0);
    let imaginary0 = f32x4.splat(0), imaginary1 = f32x4.splat(0);
    let at: usize = 0;
    while (at + 16 < bytes) {
      real0 = f32x4.add(real0, f32x4.mul(v128.load(even + at), v128.load(cosines + at)));
      imaginary0 = f32x4.add(imaginary0, f32x4.mul(v128.load(odd + at), v128.load(sines + at)));
      real1 = f32x4.add(real1, f32x4.mul(v128.load(even + at, 16), v128.load(cosines + at, 16)));
      imaginary1 = f32x4.add(imaginary1, f32x4.mul(v128.load(odd + at, 16), v128.load(sines + at, 16)));
      at += 32;
    }
    if (at < bytes) {
      real0 = f32x4.add(real0, f32x4.mul(v128.load(even + at), v128.load(cosines + at)));
      imaginary0 = f32x4.add(imaginary0, f32x4.mul(v128.load(odd + at), v128.load(sines + at)));
    }
    const real = total(f32x4.add(real0, real1)), imaginary = total(f32x4.add(imaginary0, imaginary1));
    store<f32>(out, real * real + imaginary * imaginary);
    even += row;
    odd += row;
    out += stride;
  }
}

// Rows of `inputs` float32 → rows of `outputs`: bias + weights · input, no less than `least`. Weights: [output][input], both in
// fours.
export function dense(
  weights: usize, bias: usize, inputs: i32, outputs: i32,
  input: usize, inputStride: usize, rows: i32, out: usize, outStride: usize, least: f32,
): void {
  const row = (<usize>inputs) << 2;
  const last = (<usize>outputs) << 2;
  const floor = f32x4.splat(least);
  for (let index = 0; index < rows; index++) {
    let weight = weights;
    const end = input + row;
    for (let output: usize = 0; output < last; output += 16) {
      let a = f32x4.splat(0), b = f32x4.splat(0), c = f32x4.splat(0), d = f32x4.splat(0);
      const second = row, third = row << 1, fourth = row + (row << 1);
      for (let at = input; at < end; at += 16) {
        const four = v128.load(at);
        a = f32x4.add(a, f32x4.mul(four, v128.load(weight)));
        b = f32x4.add(b, f32x4.mul(four, v128.load(weight + second)));
        c = f32x4.add(c, f32x4.mul(four, v128.load(weight + third)));
        d = f32x4.add(d, f32x4.mul(four, v128.load(weight + fourth)));
        weight += 16;
      }
      weight += fourth;
      const low = f32x4.add(v128.shuffle<i32>(a, b, 0, 4, 1, 5), v128.shuffle<i32>(a, b, 2, 6, 3, 7));
      const high = f32x4.add(v128.shuffle<i32>(c, d, 0, 4, 1, 5), v128.shuffle<i32>(c, d, 2, 6, 3, 7));
      const sum = f32x4.add(v128.shuffle<i64>(low, high, 0, 2), v128.shuffle<i64>(low, high, 1, 3));
      v128.store(out + output, f32x4.max(f32x4.add(sum, v128.load(bias + output)), floor));
    }
    input += inputStride;
    out += outStride;
  }
}
