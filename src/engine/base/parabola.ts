/**
 * Peak bin of a power spectrum → where the parabola through the logarithms of it and its neighbours peaks, −0.5..0.5 bins;
 * 0 where the three are no peak (Smith & Serra 1987).
 */
export function peakOffset(power: Float64Array | Float32Array, bin: number): number {
  const a = Math.log(power[bin - 1]! + 1e-30);
  const b = Math.log(power[bin]! + 1e-30);
  const c = Math.log(power[bin + 1]! + 1e-30);
  const curve = a - 2 * b + c;
  return curve < 0 ? Math.max(-0.5, Math.min(0.5, (a - c) / (2 * curve))) : 0;
}
