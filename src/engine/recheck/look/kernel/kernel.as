// AssemblyScript (not TypeScript: hence the ending). Build: `node ../../../listen/network/kernel/build.mjs` from this folder.

// Two sums of products at once, float32: even · cosines and odd · sines; lengths in fours. Each sum goes to `out` in four parts.
export function project(even: usize, odd: usize, cosines: usize, sines: usize, length: i32, out: usize): void {
  let real0 = f32x4.splat(0), real1 = f32x4.splat(0);
  let imaginary0 = f32x4.splat(0), imaginary1 = f32x4.splat(0);
  const end = even + ((<usize>length) << 2);
  while (even + 16 < end) {
    real0 = f32x4.add(real0, f32x4.mul(v128.load(even), v128.load(cosines)));
    imaginary0 = f32x4.add(imaginary0, f32x4.mul(v128.load(odd), v128.load(sines)));
    real1 = f32x4.add(real1, f32x4.mul(v128.load(even, 16), v128.load(cosines, 16)));
    imaginary1 = f32x4.add(imaginary1, f32x4.mul(v128.load(odd, 16), v128.load(sines, 16)));
    even += 32;
    odd += 32;
    cosines += 32;
    sines += 32;
  }
  if (even < end) {
    real0 = f32x4.add(real0, f32x4.mul(v128.load(even), v128.load(cosines)));
    imaginary0 = f32x4.add(imaginary0, f32x4.mul(v128.load(odd), v128.load(sines)));
  }
  v128.store(out, f32x4.add(real0, real1));
  v128.store(out, f32x4.add(imaginary0, imaginary1), 16);
}
