/** What writes notes into files of other programs: brought in when something is taken out. */
export { encodeCsv, encodeMusicXml, playedMidi } from '../../io/exchange/index.ts';
