import { capital } from '../../../engine/index.ts';
import type { Strings } from '../english/index.ts';
import { inWords } from './amounts.ts';

export const FROM_TEACHER: Strings['fromTeacher'] = {
  title: 'Von deiner Lehrkraft',
  empty:
    'Wenn deine Lehrkraft mit einer Rückmeldung antwortet, öffne ihre Datei hier: Die Bemerkungen stehen dann an deinen ' +
    'Versuchen, und was aufgegeben ist, kommt im Plan zuerst.',
  open: 'Rückmeldung öffnen',
  send: 'An meine Lehrkraft senden',
  toOpen: 'Eine Rückmeldung zum Öffnen',
  reading: (name) => `${name} wird gelesen`,
  close: 'Schließen',
  assigned: 'Aufgegeben',
  reviews: 'Rückmeldungen',
  asked: {
    inARow: (count) => (count === 1 ? 'einmal' : `${inWords(count)}mal hintereinander`),
    evenness: (bound) => `Schwankung höchstens ${bound}`,
    asUsual: 'wie gewohnt',
  },
  inPlan: (how) => `Deine Lehrkraft bittet darum. ${how}`,
  notPlayed: 'Seither nicht gespielt.',
  soFar: (count, wanted) => `Bis jetzt ${count} von ${wanted} hintereinander.`,
  met: (when) => `Erledigt, ${when}.`,
  from: (teacher, when) => (teacher === '' ? when : `Von ${teacher}, ${when}`),
  unread: 'Noch nicht gelesen.',
  holds: (attempts, remarks) =>
    `${capital(inWords(attempts))} ${attempts === 1 ? 'Versuch' : 'Versuche'}, ${remarks === 0 ? 'keine' : remarks === 1 ? 'eine' : inWords(remarks)} ${remarks === 1 ? 'Bemerkung' : 'Bemerkungen'}.`,
  remove: 'Löschen',
  removed: (what) => `Gelöscht, samt dem, was aufgegeben war: ${what}.`,
  undo: 'Rückgängig',
  deleted: (count) =>
    count === 1
      ? 'Eine gelöschte Rückmeldung kann eine Woche lang zurückgeholt werden.'
      : `${count} gelöschte Rückmeldungen können eine Woche lang zurückgeholt werden.`,
  bringBack: 'Zurückholen',
  page: {
    back: 'Das Tagebuch',
    print: 'Drucken',
    title: (teacher) => (teacher === '' ? 'Von deiner Lehrkraft' : `Von ${teacher}`),
    attempt: (number, of) => `Versuch ${number} von ${of}`,
    before: 'Der davor',
    next: 'Der nächste',
    played: (when) => `gespielt ${when}`,
    noSound: 'Er kam ohne Klang, und auch dieses Gerät hat den Klang nicht mehr.',
    ownSound: 'Er kam ohne Klang; du hörst deine eigene Aufnahme.',
    noAttempts: 'Mit dieser Rückmeldung kam kein Versuch.',
  },
};
