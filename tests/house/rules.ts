import { ROOMS } from './rooms.ts';

/**
 * The one rule, and the few walls that the order of the rooms does not build. Paths are from src/.
 *
 * A room (folder) imports only rooms that stand above it in `ROOMS`. A file that lies directly in a folder is that folder's
 * own: it may import any of the folder's rooms, and no room imports it, save `types.ts`, the words that the rooms of the
 * folder share.
 */
export function brokenRule(importer: string, target: string): string | null {
  const from = importer.split('/');
  const to = target.split('/');
  if (to[0] === '..') return OUTSIDE[importer]?.test(target) ? null : `${importer} leaves src: ${target}`;
  const wall = WALLS.find(({ inside, never }) => inside.test(importer) && never.test(target));
  if (wall !== undefined) return `${importer} ${wall.says}: ${target}`;
  const at = from.findIndex((part, index) => part !== to[index]);
  const ownFile = at === -1 || at === from.length - 1;
  if (ownFile) return null;
  if (at === to.length - 1) {
    return to[at] === 'types.ts' ? null : `${importer} reaches up to ${target}`;
  }
  return placeOf(from, at) < placeOf(to, at) ? `${importer} imports ${target}, which stands below it` : null;
}

/** A path in parts → where the room that its first `at + 1` parts name stands among all rooms. */
function placeOf(path: readonly string[], at: number): number {
  const room = path.slice(0, at + 1).join('/');
  const place = ROOMS.indexOf(room);
  if (place < 0)
    throw new Error(`src/${room} is not in tests/house/rooms.ts: say there above what it stands.`);
  return place;
}

/** What of the repository outside src a file may import. */
const OUTSIDE: Readonly<Record<string, RegExp>> = {
  'main.ts': /^\.\.\/audio-fixtures\/[^/]+\/attempt\.(wav|flac)$/,
  'evenfall.ts': /^\.\.\/package\.json$/,
};

const WALLS: readonly { readonly inside: RegExp; readonly never: RegExp; readonly says: string }[] = [
  { inside: /^(?!engine\/)/, never: /^engine\/(?!index\.ts$)/, says: 'enters the engine by a window' },
  { inside: /^engine\/listen\//, never: /^engine\/exercise\//, says: 'listens knowing the exercise' },
  { inside: /^engine\/report\//, never: /^engine\/listen\/(?!(index|types)\.ts$)/, says: 'hears again' },
  { inside: /^ui\//, never: /^io\/(?![^/]+\/index\.ts$)/, says: 'reaches inside a device' },
  { inside: /^(?!library\/)/, never: /^library\//, says: 'uses what is for others' },
  { inside: /^ui\//, never: /^terminal\//, says: 'imports the command line' },
];

/** The packages that a room of src (or main.ts) may import, each with its reason. */
export const PACKAGES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  engine: {
    'fft.js': 'spectra',
    meyda: 'features of timbre',
    pitchy: 'pitch of a single note (McLeod)',
    tonal: 'music theory',
    valibot: 'the published formats, each defined once: type, schema and check',
  },
  io: {
    '@wasm-audio-decoders/flac': 'FLAC',
    '@wasm-audio-decoders/ogg-vorbis': 'Ogg Vorbis',
    fflate: 'zip files and deflate',
    idb: 'IndexedDB with promises, for the journal',
    mediabunny: 'sound out of MP4, QuickTime and WebM, and into WebM',
    'midi-file': 'MIDI files',
    'musicxml-io': 'files of MusicXML and ABC, read',
    'mpg123-decoder': 'MP3',
    'node-web-audio-api': 'AAC on the command line, where it is installed',
    'opus-decoder': 'Opus',
    valibot: 'checks what is read of a journal’s or a review’s file',
  },
  terminal: {
    'node:child_process': 'helpers that sort a pile of recordings',
    'node:crypto': 'fingerprints of recordings, under which results are kept',
    'node:fs': 'reads the recording, writes the MIDI file',
    'node:os': 'how many helpers, and where the user’s cache lies',
    'node:path': 'names of files',
    'node:readline': 'a file of lines that is gone on with, however long',
    'node:util': 'arguments',
    valibot: 'the JSON of a pile of recordings, defined once',
  },
  ui: {
    '@vexflow-fonts/bravura': 'the font of music',
    svelte: 'the page',
    vexflow: 'the staff',
  },
  'main.ts': { svelte: 'mounts the page' },
};
