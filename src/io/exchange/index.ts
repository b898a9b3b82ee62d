export { encodeCsv } from './csv.ts';
export { encodeMidi } from './midi.ts';
export type { MidiNote, MidiOptions } from './midi.ts';
export { encodeWav } from './wav.ts';
export type { WavOptions, WavSamples } from './wav.ts';
