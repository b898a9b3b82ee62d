import type { Strings } from '../english/index.ts';

const COUNTS = ['keinmal', 'einmal', 'zweimal', 'dreimal', 'viermal', 'fünfmal'];

export const REVIEW: Strings['review'] = {
  remarks: 'Bemerkungen',
  noRemarks: 'Keine Bemerkungen zu diesem Versuch.',
  pin: (number, place) => `Bemerkung ${number}: ${place}`,
  note: (name, number) => `Ton ${number}, ${name}`,
  extraNote: (name) => `${name}, nicht in der Übung`,
  stretch: (from, to, first, last) => `von ${from} bis ${to}, Töne ${first} bis ${last}`,
  attempt: 'Der ganze Versuch',
  hearPlace: ': diese Stelle anhören',
  hear: 'Bemerkung anhören',
  hush: 'Halt',
  opening: 'Wird geöffnet …',
  spoken: 'Diese Bemerkung ist gesprochen.',
  cannotHear: 'Diese gesprochene Bemerkung lässt sich hier nicht abspielen.',
  heardAs: (words) => `Evenfall hat gehört: ${words}.`,
  VERDICTS: {
    correct: 'das war richtig',
    wrong: 'das war falsch',
    missed: 'das fehlte',
    'not-played': 'das wurde nicht gespielt',
    mistaken: 'das stimmt nicht',
  },
  says: (verdict) => `Deine Lehrkraft sagt: ${verdict}.`,
  tookFor: (title) => `Evenfall hielt es für: ${title}. Deine Lehrkraft hat die Übung gewählt.`,
  title: (student) => (student === '' ? 'Eine Rückmeldung' : `Eine Rückmeldung für ${student}`),
  sentTitle: (student) => (student === '' ? 'Versuche' : `Versuche von ${student}`),
  from: (teacher) => `von ${teacher}`,
  made: (when) => `vom ${when}`,
  played: (when) => `gespielt ${when}`,
  picture: 'Der Versuch als Perlenkette; worauf es darin ankommt, steht daneben in Worten.',
  sound: 'Die Aufnahme',
  next: 'Als Nächstes:',
  assigned: 'Zu üben',
  tempo: (tempo) => `mit ${tempo}`,
  inARow: (count) =>
    count === 1 ? 'einmal wie verlangt' : `${COUNTS[count] ?? `${count}-mal`} hintereinander wie verlangt`,
  evenness: (percent) => `Gleichmaß höchstens ${percent}`,
  asUsual: 'wie gewohnt',
  onPaper: 'Gesprochene Bemerkungen und Aufnahmen hört man in der Datei, nicht auf dem Papier.',
  madeBy:
    'Diese Seite hat Evenfall gemacht. Sie hat alles in sich: Sie fragt in keinem Netz nach und führt kein Programm aus.',
  care: 'Bei Schmerzen oder Taubheit hör auf, ruh dich aus, und frag deine Lehrkraft und eine Ärztin oder einen Arzt.',
};
