/** Periodic Hann window of `length` samples: w(i) = sin²(π i / length) (Harris 1978, eq. 27a; from memory). */
export function hann(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * i) / length) ** 2);
}

/** Tukey window of `length` samples: flat, with a cosine taper over `share` of it, half at each end (Harris 1978; from memory). */
export function tukey(length: number, share: number): Float64Array {
  const taper = (share * length) / 2;
  return Float64Array.from({ length }, (_, i) => {
    const edge = Math.min(i, length - 1 - i);
    return edge >= taper ? 1 : Math.sin((Math.PI * edge) / (2 * taper)) ** 2;
  });
}
