import type { Strings } from '../english/index.ts';

export const FRAME: Strings['frame'] = {
  what:
    'Evenfall hört zu, während du eine Übung spielst, und sagt, was gespielt wurde und wie gleichmäßig. ' +
    'Wähl, was du spielst, dann nimm es auf oder öffne eine Aufnahme.',
  pages: 'Seiten',
  play: 'Spielen',
  stand: 'Am Klavier',
  keys: 'Tonarten',
  journal: 'Tagebuch',
  teacher: 'Lehrkräfte',
  careHead: 'Vorsicht.',
  care: 'Bei Schmerzen oder Taubheit hör auf, ruh dich aus, und frag deine Lehrkraft und eine Ärztin oder einen Arzt.',
  privacyHead: 'Datenschutz.',
  privacy:
    'Klang verlässt dieses Gerät nur in Dateien, die du selbst weitergibst: Es gibt keinen Server und kein Konto. Nimm ' +
    'Kinder nur auf, wenn ihre Erziehungsberechtigten zustimmen.',
  clearsUnused:
    'Er löscht es auch, wenn er sieben Tage lang benutzt wird, ohne dass du hierherkommst, außer die Seite liegt auf dem ' +
    'Home-Bildschirm (Teilen, Zum Home-Bildschirm).',
  language: 'Sprache',
  noteNames: 'Notennamen',
  namings: { letters: 'C D E … B', german: 'C D E … H', 'fixed-do': 'do re mi … si' },
  credits: 'Nachweise',
  creditsText: {
    before:
      'Das Beispiel ist erfunden. Es ist aus Klavieraufnahmen von Alexander Holm zusammengesetzt, verwendet und ' +
      'bearbeitet unter der Lizenz',
    after: '. Notenschrift: Bravura, SIL Open Font License 1.1.',
  },
  licence: 'Creative Commons Namensnennung 3.0',
  drop: 'Lass die Aufnahme hier los',
  dropHere: 'Rückmeldung oder Aufnahme hier ablegen',
  noPlaying: 'In dieser Aufnahme war kein Spiel zu finden',
  notRecognised: 'Die Übung war nicht zu erkennen',
  saveSound: 'Klang sichern',
  adopt: 'Ins Tagebuch legen',
  adoptHint: 'wenn du es selbst gespielt hast',
  adopted: 'Es liegt im Tagebuch.',
  search: 'Suchen',
  several: (count) => (count === 1 ? 'Mit ihr geöffnet' : `${count} Aufnahmen, zusammen geöffnet`),
  notOpened: 'ließ sich nicht öffnen',
  lastAttempt: (title: string) => `Der letzte Versuch: ${title}`,
  measureAs: (title) => `Als ${title} messen`,
};
