import type { Strings } from '../english/index.ts';

export const TAKE_OUT: Strings['takeOut'] = {
  title: 'Exportieren',
  print: 'Auf ein Blatt drucken',
  picture: 'Bild der Schnur (PNG)',
  notes: 'Töne (CSV)',
  midi: 'Was gespielt wurde (MIDI)',
  hands: { left: 'Linke Hand', right: 'Rechte Hand' },
  musicXml: 'Noten (MusicXML)',
  written: 'Geschrieben',
  played: 'Gespielt',
  numbers: 'Dezimalzahlen in der CSV',
  spreadsheets: { point: 'Punkt: 1.5', comma: 'Komma: 1,5' },
  sound: 'Klang (WAV)',
  report: 'Bericht (JSON)',
  staffInWords: (marks) => `Zeichen in den Noten: ${marks}.`,
  noMarks: 'keine',
  missed: 'fehlt',
  unsure: 'unsicher',
  extra: { slip: 'mitgegriffen', repeat: 'noch einmal', restart: 'zurück', other: 'zu viel' },
  marksMean:
    'Ein gestrichelter Ring ist ein fehlender Ton, ein Strich durch eine Note ein falscher, daneben steht der angeschlagene; ' +
    'ein kleiner Ring ist ein Ton zu viel. Ein Bogen ist ein später Unter- oder Übersatz, eine schräge Linie heißt, dass die Hände ' +
    'auseinanderfallen, eine Wellenlinie, dass ein Akkord nicht zugleich kommt.',
};
