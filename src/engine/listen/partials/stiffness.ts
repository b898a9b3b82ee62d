/**
 * Key → inharmonicity B that a piano's string has by its design: two straight lines in log B along the keyboard (Rigaud,
 * David & Daudet 2013, eq. 5; coefficients from memory). A real piano differs by a factor of two or more.
 */
export function typicalStiffness(midi: number): number {
  return Math.exp(0.0926 * midi - 13.64) + Math.exp(-0.0847 * midi - 5.82);
}

/** Partial n of a stiff string over its first: f_n / f_1 = n · sqrt((1 + B n²) / (1 + B)) (Fletcher 1964; from memory). */
export function partialRatio(n: number, stiffness: number): number {
  return n * Math.sqrt((1 + stiffness * n * n) / (1 + stiffness));
}
