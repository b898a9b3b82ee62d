export { encodeCsv } from './csv.ts';
export { encodeMidi } from './midi.ts';
export type { MidiNote, MidiOptions } from './midi.ts';
export { encodeWav } from '../encode/index.ts';
export type { WavOptions, WavSamples } from '../encode/index.ts';
