/** What can be taken out of a report, and the marks on the staff. */
export const TAKE_OUT = {
  title: 'Save or print',
  print: 'Print on one sheet',
  picture: 'Picture of the string (PNG)',
  notes: 'Notes (CSV)',
  midi: 'What was played (MIDI)',
  hands: { left: 'Left hand', right: 'Right hand' },
  musicXml: 'Sheet music (MusicXML)',
  written: 'Written',
  played: 'Played',
  numbers: 'Decimals in the CSV',
  spreadsheets: { point: 'point: 1.5', comma: 'comma: 1,5' },
  sound: 'Sound (WAV)',
  report: 'Report (JSON)',
  staffInWords: (marks: string) => `Marks on the staff: ${marks}.`,
  noMarks: 'none',
  missed: 'missed',
  unsure: 'unsure',
  extra: { slip: 'caught', repeat: 'again', restart: 'going back', other: 'extra' },
  marksMean:
    'A broken ring is a missed note, a stroke through a note a wrong one with what was struck written at it, a small ring ' +
    'an extra one. A bow is a late crossing, a slanting line hands that fall apart, a wavy line a chord that is spread.',
};
