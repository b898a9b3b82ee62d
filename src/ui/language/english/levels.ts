/** The table of levels, and what may be changed of it. */
export const LEVEL_TABLE = {
  title: 'Levels: what is begun when, and how fast',
  about:
    'The plan follows these levels, the first one first; each hand alone, then together. The tempo is the least at which an ' +
    'exercise counts as ready; touch and loudness count where they are heard, loudness once the piano is known. They are common practice, no source: a teacher may want them otherwise, and can pass them on as a file.',
  level: (name: string) => `Level ${name}.`,
  allKeys: 'All keys',
  name: 'Name of the level',
  keys: 'Keys, in the order in which they are begun',
  addKey: 'Add a key',
  form: 'Exercise',
  octaves: 'Octaves',
  remove: 'take it out',
  addForm: (form: string) => `Add: ${form}`,
  addLevel: 'Add a level',
  removeLevel: 'Take out level',
  removed: (name: string) => `Level ${name} is taken out.`,
  export: 'Export the levels',
  import: 'Import levels',
  toImport: 'Levels to import',
  imported: (count: number) => `${count} ${count === 1 ? 'level' : 'levels'} imported.`,
  reset: 'As they were at first',
  isAsAtFirst: 'The levels are as they were at first.',
  undo: 'Undo',
  touch: 'Touch',
  anyTouch: 'any touch',
  /** how uneven the loudness may be */
  loudness: 'Loudness within, dB',
  asksLoudness: (db: string) => `loudness within ${db}`,
};
