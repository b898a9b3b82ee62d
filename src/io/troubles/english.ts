import { tellNotice } from '../../engine/index.ts';
import { A, CONVERT, KEEPS_NOTHING, NO_ROOM, OTHERS, SENTENCES } from './sentences.ts';
import type { Tell, Tellings } from './types.ts';

/** System errors in plain words (POSIX errno names). */
const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file. Check the name and the folder.',
  EISDIR: 'It is a folder. Name the files in it, e.g. FOLDER/*.',
  EACCES: 'It may not be read. Check its permissions.',
  EPERM: 'It may not be read. Check its permissions.',
};

const DATE = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' });
const TIME = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short' });

/** An attempt in a file, by when it was played. */
const attemptOf = (whenMs: number | null): string =>
  whenMs === null ? 'An attempt' : `An attempt of ${DATE.format(whenMs)}, ${TIME.format(whenMs)},`;

/** What of an attempt lies at a place of its schema. */
const PARTS: Readonly<Record<string, string>> = {
  report: 'its report',
  choice: 'its exercise',
  intention: 'what was to be practised',
  targetBpm: 'the tempo aimed at',
};
const partOf = (place: string): string => PARTS[place.split('.')[0]!] ?? 'what is written of it';

/** Every trouble in English, with the way out where there is one. */
export const english = (tell: Tell): Tellings => ({
  ...SENTENCES,
  within: ({ name, of }) => `${name}: ${tell(of)}`,
  'page-opens-it': ({ of }) => `${tell(of)} The browser page can open it too.`,
  'file-other': ({ what }) => OTHERS[what],
  'same-sound': ({ name }) => `It is the same recording as ${name}.`,
  'opus-channels': ({ channels }) => `It is Opus sound with ${channels} channels. ${CONVERT}`,
  'header-missing': ({ container }) =>
    `The ${container} header is missing: the file is damaged. Record or export it again.`,
  'container-without-sound': ({ container }) =>
    `It is ${A[container]} file without any sound in it. Record or export it again.`,
  'header-senseless': ({ container, channels, rateHz, bits }) =>
    `Its ${container} header makes no sense (${channels} channels, ${rateHz} Hz, ${bits} bits): the file is damaged.`,
  'packed-otherwise': ({ container, codec }) =>
    `It is ${A[container]} file with ${codec === null ? 'packed sound of a rare kind' : `${codec} sound`}. ${CONVERT}`,
  'rate-impossible': ({ rateHz }) =>
    `It claims ${rateHz} samples a second, which no recording has: the file is damaged.`,
  'codec-other': ({ codec }) => `It holds ${codec} sound, which cannot be decoded here. ${CONVERT}`,
  'zip-too-large': ({ mostMb }) => `It is larger than ${mostMb} MB, which is not opened here.`,
  'zip-too-many': ({ files, most }) => `It holds ${files} files; up to ${most} are opened.`,
  'zip-member-too-large': ({ name, mostMb }) =>
    `${name} is larger than ${mostMb} MB, which is not opened here.`,
  'zip-member-swells': ({ name }) =>
    `${name} would unpack to far more than any recording or text. It is not opened.`,
  'zip-unpacks-too-much': ({ mostMb }) =>
    `It would unpack to more than ${mostMb} MB, which is not opened here.`,
  'zip-twice': ({ name }) => `It holds two files named ${name}.`,
  'zip-member-damaged': ({ name }) => `${name} is damaged in it. Send or save it again.`,
  'review-unopened': ({ because }) => `This review cannot be opened. ${tell(because)}`,
  'review-refused': ({ because }) => `This review is refused: ${tell(because)} Ask for the file once more.`,
  'review-part-too-large': ({ name }) => `This review is refused: ${name} in it is too large.`,
  'review-no-sound': ({ name }) => `${name} in it is no sound.`,
  'review-manifest': ({ place }) => `What it says of itself is not in order (${place}).`,
  'review-no-report': ({ name, place }) => `${name} is no report that can be shown (${place}).`,
  'review-too-many-notes': ({ name }) => `${name} holds more notes than anybody plays in one attempt.`,
  'review-no-such-step': ({ attempt }) =>
    `A remark on attempt ${attempt} hangs on a step that its exercise does not have.`,
  'review-unwritable': ({ place, detail }) => `This review cannot be written: ${place}: ${detail}`,
  'music-grace': () =>
    'It has grace notes, for which no moment is written. Take them out, or choose other bars.',
  'music-no-pitches': () => 'It holds notes without pitch, as drums do. A piano cannot play them.',
  'music-between-keys': () =>
    'It has notes between the keys of a piano, as quarter tones are. Take them out, or choose other bars.',
  'music-endings': () =>
    'It has a first and a second ending, of which each time one is played. Choose bars with one of them.',
  'music-too-large': ({ mostMb }) => `It is larger than ${mostMb} MB, which is not opened here.`,
  'music-too-long': ({ bars, most }) => `It has ${bars} bars; a passage has up to ${most}. Say which bars.`,
  'music-no-bars': ({ from, to, bars }) => `There are no bars ${from} to ${to} in it; it has ${bars}.`,
  'music-staves': ({ staves }) => `It has ${staves} staves; a passage has one or two.`,
  'levels-damaged': ({ place }) =>
    `What the file says of the levels is not in order (${place}); yours are as they were.`,
  'journal-attempt': ({ whenMs, place }) =>
    `${attemptOf(whenMs)} was left out: ${partOf(place)} is not in order.`,
  'journal-no-sound': ({ whenMs }) => `${attemptOf(whenMs)} is kept without its sound, which cannot be read.`,
  'journal-too-large': ({ whenMs }) => `${attemptOf(whenMs)} was left out: it is too large.`,
  'journal-and-more': ({ more }) => `… and ${more} more.`,
  'sound-lost': ({ lostSec }) => tellNotice({ notice: 'sound-lost', lostSec }),
  'no-room': ({ keeper }) => NO_ROOM[keeper],
  'used-by-newer': ({ keeper }) =>
    `A newer version of this page was here and keeps the ${keeper} in a new way. Load this page anew, with a connection.`,
  'keeps-nothing': ({ keeper }) => KEEPS_NOTHING[keeper],
  'not-kept': ({ keeper, because }) => `The ${keeper} could not be used: ${tell(because)}`,
  'not-worked-out': ({ because }) => `This attempt could not be worked out. ${tell(because)}`,
  'file-not-made': ({ because }) => `The file could not be made. ${tell(because)}`,
  'not-passed-on': ({ because }) =>
    `The system could not pass it on. Save the file, then send it yourself. (${tell(because)})`,
  'not-reported': ({ notice }) => tellNotice(notice),
  'system-refuses': ({ code }) => SYSTEM[code] ?? `It could not be read (${code}).`,
  unforeseen: ({ detail }) => `Something went wrong that was not foreseen: ${detail}`,
});
