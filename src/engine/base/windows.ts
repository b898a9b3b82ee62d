/** Periodic Hann window of `length` samples: w(i) = sin²(π i / length) (Harris 1978, eq. 27a; from memory). */
export function hann(length: number): Float64Array {
  return Float64Array.from({ length }, (_, i) => Math.sin((Math.PI * i) / length) ** 2);
}

/**
 * Two halves of Hann windows joined: rises over `rise` samples, falls over the rest. Leans towards its start, where a struck
 * string is loudest; side lobes fall as fast as Hann's because value and slope are continuous.
 */
export function leaningHann(length: number, rise: number): Float64Array {
  return Float64Array.from({ length }, (_, i) =>
    i < rise
      ? Math.sin((Math.PI * i) / (2 * rise)) ** 2
      : Math.cos((Math.PI * (i - rise)) / (2 * (length - rise))) ** 2,
  );
}
