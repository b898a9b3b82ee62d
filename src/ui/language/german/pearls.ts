import type { Strings } from '../english/index.ts';

export const PEARLS: Strings['pearls'] = {
  string:
    'Der Versuch als Perlenschnur. Die Pfeiltasten gehen von Perle zu Perle, die Eingabetaste spielt die Stelle, ' +
    'Umschalt und eine Pfeiltaste wählen einen Abschnitt.',
  touch:
    'Berühr eine Perle, um die Stelle zu hören. Zieh an der Schnur entlang, um einen Abschnitt zu wählen.',
  ring: 'Leerer Ring: bei diesem Ton unsicher.',
  EXTRA: {
    slip: 'mitgegriffen',
    repeat: 'noch einmal angeschlagen',
    restart: 'beim Zurückgehen gespielt',
    other: 'nicht in der Übung',
  },
  struckFor: (struck, wanted) => `${struck} statt ${wanted} angeschlagen`,
  missed: (name) => `${name} fehlt`,
  notSure: (name, reason) => `${name} unsicher: ${reason}`,
  label: {
    extra: { slip: 'mit', repeat: 'noch einmal', restart: 'zurück', other: 'zu viel' },
    missed: 'fehlt',
    unsure: 'unsicher',
    wanted: (name) => `statt ${name}`,
    struckFor: (struck, wanted) => `${struck} statt ${wanted}`,
    noteMissed: (name) => `${name} fehlt`,
  },
  legend:
    'Die feinen Striche stehen, wo gleichmäßige Töne fallen würden. Eine Perle ist ein Ton in dem Augenblick, in dem er klang, je ' +
    'größer, desto lauter; ein gestrichelter Ring fehlte, ein leerer ist unsicher, ein falscher Ton hängt mit seinem Namen darunter, ' +
    'ein kleiner Ring ist ein Ton zu viel. Ein Bogen ist ein Unter- oder Übersatz, dick, wo er spät kam.',
  thumbUnder: 'Untersatz',
  overThumb: 'Übersatz',
  inTime: 'zur rechten Zeit',
  late: (amount) => `${amount} zu spät`,
  early: (amount) => `${amount} zu früh`,
  louder: (amount) => `${amount} lauter als die anderen`,
  softer: (amount) => `${amount} leiser als die anderen`,
};
