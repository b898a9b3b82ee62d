/** Names as they are spoken. */
export const NAMES = {
  fingers: ['thumb', 'second finger', 'third finger', 'fourth finger', 'little finger'],
  finger: (finger: number) => `finger ${finger}`,
  /** said after a letter or a syllable */
  signs: { '': '', '#': ' sharp', '##': ' double sharp', b: ' flat', bb: ' double flat' },
  natural: ' natural',
  counts: ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven'],
  sharps: (count: number) => (count === 1 ? 'sharp' : 'sharps'),
  flats: (count: number) => (count === 1 ? 'flat' : 'flats'),
  noSigns: 'no sharps or flats',
};
