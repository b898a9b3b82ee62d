import type { Strings } from '../english/index.ts';

export const RECORD: Strings['record'] = {
  yourAttempt: 'Dein Versuch',
  record: 'Aufnehmen',
  open: 'Datei öffnen',
  example: 'Beispiel',
  aside: 'oder leg eine Aufnahme irgendwo auf diese Seite',
  noAac: 'Dieser Browser liest kein M4A (AAC), aber WAV, FLAC, MP3, Ogg, Opus und WebM.',
  toOpen: 'Eine Aufnahme zum Öffnen',
  reading: (name) => `${name} wird gelesen`,
  listening: (name) => `${name} wird angehört`,
  names: {
    'your recording': 'deine Aufnahme',
    'example attempt': 'Beispiel',
    'at the piano': 'am Klavier',
  },
  failed: {
    microphone: 'Das Mikrofon ließ sich nicht öffnen',
    'microphone-gone': 'Das Mikrofon ist verschwunden',
    file: 'Diese Datei ließ sich nicht öffnen',
    analysis: 'Dieser Versuch ließ sich nicht auswerten',
    reviews: 'Die Rückmeldungen ließen sich nicht sichern oder lesen',
  },
  cancel: 'Abbrechen',
  waiting: 'Warten auf das Mikrofon: Dein Browser fragt vielleicht, ob diese Seite es benutzen darf.',
  explain:
    'Das Mikrofon ist nur an, während du aufnimmst, und der Klang bleibt auf diesem Gerät. Stell das Gerät ein bis zwei ' +
    'Meter vom Klavier entfernt auf.',
  turnOn: 'Mikrofon einschalten',
  notNow: 'Jetzt nicht',
  recording: 'Aufnahme läuft',
  ready: 'Bereit',
  microphone: 'Mikrofon',
  level: 'Pegel des Mikrofons',
  clipping: 'übersteuert',
  start: 'Start',
  stop: 'Stopp',
  throwAway: 'Verwerfen',
  tooLoud: 'Zu laut: Stell das Gerät weiter weg.',
  nothingYet: 'Es kommt kein Klang an: Spiel einen Ton.',
  veryQuiet: 'Sehr leise: Stell das Gerät näher heran.',
  levelGood: 'Der Pegel ist gut.',
};
