/** What there is to know about a key. */
export const KEYS = {
  signature: 'Key signature',
  scale: 'Scale',
  minorScales: { natural: 'Natural scale', harmonic: 'Harmonic scale', melodic: 'Melodic scale' },
  triad: 'Tonic triad',
  primaryChords: 'Primary chords',
};
