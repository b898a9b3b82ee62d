import type { Strings } from '../english/index.ts';
import { attempts } from './amounts.ts';

export const SEND: Strings['send'] = {
  title: 'An meine Lehrkraft senden',
  back: 'Das Tagebuch',
  nothing: 'Es gibt noch nichts zu senden. Nimm zuerst einen Versuch auf.',
  which: 'Welche Versuche',
  chosen: (count) => `${attempts(count)} gewählt`,
  none: 'Wähl mindestens einen Versuch.',
  most: (count) => `In eine Datei gehen höchstens ${count} Versuche.`,
  older: 'Ältere Versuche',
  newestOnly: 'Von jeder Übung der neueste',
  noSoundKept: 'Klang nicht mehr da',
  sound: { legend: 'Klang', with: 'Mit Klang', without: 'Ohne Klang' },
  name: 'Dein Name',
  nameHint: 'wie deine Lehrkraft dich kennt; auf diesem Gerät gemerkt',
  words: 'Ein paar Worte',
  wordsHint: 'wenn du magst: was schwer war, was du wissen möchtest',
  inside: (count, withSound) =>
    `In der Datei: dein Name und deine Worte, dazu ${attempts(count)} mit Bericht${withSound ? ' und Klang, klein gepackt' : ', ohne Klang'}.`,
  nothingSent:
    'Evenfall sendet selbst nichts. Es macht eine Datei auf diesem Gerät, und du gibst sie deiner Lehrkraft auf dem Weg, den ' +
    'du sonst nimmst.',
  consent: 'Gib Aufnahmen von Kindern nur weiter, wenn die Erziehungsberechtigten einverstanden sind.',
  make: 'Datei machen',
  making: 'Die Datei wird gemacht',
  cancel: 'Abbrechen',
  made: (name, bytes) => `${name} ist fertig (${bytes}).`,
  save: 'Datei sichern',
  share: 'Weitergeben …',
  shared: 'Dem System übergeben, das sie weitergibt.',
  saved: 'Gesichert. Nun schick sie deiner Lehrkraft, per Mail oder wie du magst.',
  this: 'An meine Lehrkraft senden',
};
