import type { Strings } from '../english/index.ts';

export const LEVEL_TABLE: Strings['journal']['levels'] = {
  title: 'Stufen: was wann begonnen wird, und wie schnell',
  about:
    'Der Plan folgt diesen Stufen, die erste zuerst; jede Hand allein, dann beide zusammen. Das Tempo ist das langsamste, bei ' +
    'dem eine Übung sitzt. Es sind übliche Werte ohne Quelle: Eine Lehrkraft kann sie anders wollen und als Datei weitergeben.',
  level: (name) => `Stufe ${name}.`,
  allKeys: 'Alle Tonarten',
  name: 'Name der Stufe',
  keys: 'Tonarten, in der Reihenfolge, in der sie begonnen werden',
  addKey: 'Tonart hinzufügen',
  form: 'Übung',
  octaves: 'Oktaven',
  remove: 'herausnehmen',
  addForm: (form) => `Hinzufügen: ${form}`,
  addLevel: 'Stufe hinzufügen',
  removeLevel: 'Stufe herausnehmen',
  removed: (name) => `Stufe ${name} ist herausgenommen.`,
  export: 'Stufen exportieren',
  import: 'Stufen importieren',
  toImport: 'Stufen zum Importieren',
  imported: (count) => `${count} ${count === 1 ? 'Stufe' : 'Stufen'} importiert.`,
  reset: 'Wie am Anfang',
  isAsAtFirst: 'Die Stufen sind wie am Anfang.',
  undo: 'Rückgängig',
  touch: 'Artikulation',
  anyTouch: 'beliebig',
  loudness: 'Lautstärke bis auf, dB',
  asksLoudness: (db) => `Lautstärke bis auf ${db}`,
};
