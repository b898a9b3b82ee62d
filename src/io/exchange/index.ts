export { encodeCsv } from './csv.ts';
export type { CsvOptions, Spreadsheet } from './csv.ts';
export { encodeMusicXml } from './musicxml.ts';
export type { MusicXmlNames } from './musicxml.ts';
export { inOrder } from './order.ts';
export type { PlacedNote } from './order.ts';
export { encodeMidi, playedMidi } from './midi.ts';
export type { MidiMusic, MidiNote, MidiOptions } from './midi.ts';
export { encodeWav } from '../encode/index.ts';
