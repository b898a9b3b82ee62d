import { tellNotice } from '../../engine/index.ts';
import type { Tell, Tellings } from './types.ts';

const CONVERT = 'Convert it to WAV, FLAC, MP3 or Ogg, then try again.';

const OTHERS = {
  midi: 'It is a MIDI file, which holds keys and no sound.',
  pdf: 'It is a PDF document.',
  jpeg: 'It is a JPEG picture.',
  png: 'It is a PNG picture.',
  zip: 'It is a ZIP archive: unpack it first.',
  'web-page': 'It is a web page, not the file behind it.',
  rar: 'It is a RAR archive, which is not opened here: pack a zip instead.',
  '7z': 'It is a 7z archive, which is not opened here: pack a zip instead.',
  amr: `It is AMR telephone sound. ${CONVERT}`,
  'windows-media': `It is Windows Media sound. ${CONVERT}`,
  wavpack: `It is WavPack sound. ${CONVERT}`,
  avi: `It is an AVI video. ${CONVERT}`,
  'mpeg-video': `It is an MPEG video. ${CONVERT}`,
  'real-audio': `It is RealAudio sound. ${CONVERT}`,
  'monkeys-audio': `It is Monkey’s Audio sound. ${CONVERT}`,
  dolby: `It is Dolby sound. ${CONVERT}`,
  dsd: `It is DSD sound. ${CONVERT}`,
  'sun-audio': `It is Sun audio. ${CONVERT}`,
} as const;

/** System errors in plain words (POSIX errno names). */
const SYSTEM: Readonly<Record<string, string>> = {
  ENOENT: 'There is no such file. Check the name and the folder.',
  EISDIR: 'It is a folder. Name the files in it, e.g. FOLDER/*.',
  EACCES: 'It may not be read. Check its permissions.',
  EPERM: 'It may not be read. Check its permissions.',
};

const A = { WAV: 'a WAV', AIFF: 'an AIFF', 'Core Audio': 'a Core Audio' } as const;

const NO_ROOM = {
  journal:
    'There is no room left on this device for the journal. Export it, then let go of the sound of older attempts.',
  reviews:
    'There is no room left on this device for the review. Delete older reviews or the sound of older attempts, then open it again.',
  recordings:
    'There is no room left on this device for recordings. Make the reviews that are due, then delete older recordings.',
} as const;

const KEEPS_NOTHING = {
  journal:
    'This browser keeps no journal here, as in a private window. Attempts are told, but not stored; save their sound.',
  reviews:
    'This browser keeps no reviews here, as in a private window. The review is shown, but not stored; keep its file.',
  recordings: 'This browser keeps no recordings here, as in a private window. Open it in an ordinary window.',
} as const;

/** Every trouble in English, with the way out where there is one. */
export const english = (tell: Tell): Tellings => ({
  within: ({ name, of }) => `${name}: ${tell(of)}`,
  'page-opens-it': ({ of }) => `${tell(of)} The browser page can open it too.`,
  'file-empty': 'The file is empty (0 bytes). Record or send it again.',
  'file-unknown': `It is not a sound file of a known kind, or it is damaged. ${CONVERT}`,
  'file-other': ({ what }) => OTHERS[what],
  'file-unreadable': 'It could not be read. Is it still where it was?',
  'no-backup': 'It is no backup of the page for teachers.',
  'backup-newer': 'It was made by a newer Evenfall. Load this page anew, then bring it in again.',
  'backup-damaged': 'It is damaged, and nothing of it could be brought in. Take another one.',
  'same-sound': ({ name }) => `It is the same recording as ${name}.`,
  'file-gone': 'This recording is not there any more. Give it again.',
  'attempt-gone':
    'This attempt is not on this device, or not any more. A recording that was opened can be opened again.',
  'file-damaged': 'It could not be decoded: the file is damaged. Send it again.',
  'contents-damaged': 'Its contents are not in order: cut short or damaged. Send it again.',
  'end-cut-off':
    'The file was cut off on its way: its end, without which the rest cannot be read, is missing. Send it again.',
  'packet-list-missing': 'Its list of packets is missing: the file is cut short. Send it again.',
  'sound-locked':
    'Its sound is locked: only the program that it was bought with can open it. Record it yourself.',
  'ogg-without-sound': `It is an Ogg file without Opus, Vorbis or FLAC sound. ${CONVERT}`,
  'opus-channels': ({ channels }) => `It is Opus sound with ${channels} channels. ${CONVERT}`,
  'opus-header-senseless': `Its Opus header makes no sense. ${CONVERT}`,
  'no-wav': 'It is no WAV file. Decode it first, or convert it to WAV.',
  'wav-header-short': 'The WAV header is cut short: the file is damaged. Record or export it again.',
  'header-missing': ({ container }) =>
    `The ${container} header is missing: the file is damaged. Record or export it again.`,
  'container-without-sound': ({ container }) =>
    `It is ${A[container]} file without any sound in it. Record or export it again.`,
  'header-senseless': ({ container, channels, rateHz, bits }) =>
    `Its ${container} header makes no sense (${channels} channels, ${rateHz} Hz, ${bits} bits): the file is damaged.`,
  'packed-otherwise': ({ container, codec }) =>
    `It is ${A[container]} file with ${codec === null ? 'packed sound of a rare kind' : `${codec} sound`}. ${CONVERT}`,
  'nothing-after-header': 'No sound follows the header: the file is cut short. Send or export it again.',
  'no-mp3-frame': 'No MP3 frame is whole in it: the file is cut short or damaged.',
  'nothing-decoded': 'No sound could be decoded from it: the file is cut short or damaged.',
  'rate-impossible': ({ rateHz }) =>
    `It claims ${rateHz} samples a second, which no recording has: the file is damaged.`,
  'no-sound-track': `There is no sound in it. ${CONVERT}`,
  'codec-unknown': `It holds a kind of sound that is not known here. ${CONVERT}`,
  'codec-other': ({ codec }) => `It holds ${codec} sound, which cannot be decoded here. ${CONVERT}`,
  'zip-damaged': 'It is no zip file, or it is damaged or cut short. Send or save it again.',
  'zip-too-large': ({ mostMb }) => `It is larger than ${mostMb} MB, which is not opened here.`,
  'zip-too-many': ({ files, most }) => `It holds ${files} files; up to ${most} are opened.`,
  'zip-in-parts': 'It is one part of several. Pack it as one file.',
  'zip-locked': 'It is locked with a password. Pack it without one.',
  'zip-packed-otherwise': 'It is packed in a way that is not read here. Pack it as an ordinary zip.',
  'zip-member-too-large': ({ name, mostMb }) =>
    `${name} is larger than ${mostMb} MB, which is not opened here.`,
  'zip-member-swells': ({ name }) =>
    `${name} would unpack to far more than any recording or text. It is not opened.`,
  'zip-unpacks-too-much': ({ mostMb }) =>
    `It would unpack to more than ${mostMb} MB, which is not opened here.`,
  'zip-twice': ({ name }) => `It holds two files named ${name}.`,
  'zip-overlaps': 'Its files lie over each other. It is not opened.',
  'zip-nameless': 'It holds a file without a usable name.',
  'zip-leads-elsewhere': 'It holds a file whose name would lead somewhere else.',
  'zip-member-damaged': ({ name }) => `${name} is damaged in it. Send or save it again.`,
  'zip-member-gone': 'It is no longer in its archive.',
  'no-review': 'This file is no review of Evenfall. Choose the file that your teacher or student sent.',
  'review-newer':
    'This review was written by a newer version. Bring this page up to date, then open it again.',
  'review-unopened': ({ because }) => `This review cannot be opened. ${tell(because)}`,
  'review-refused': ({ because }) => `This review is refused: ${tell(because)} Ask for the file once more.`,
  'review-part-too-large': ({ name }) => `This review is refused: ${name} in it is too large.`,
  'review-holds-other': 'It holds a file that belongs to no review.',
  'review-names-twice': 'It names one of its files twice.',
  'review-misses-file': 'One of its files is missing.',
  'review-no-sound': ({ name }) => `${name} in it is no sound.`,
  'review-manifest': ({ place }) => `What it says of itself is not in order (${place}).`,
  'review-no-report': ({ name, place }) => `${name} is no report that can be shown (${place}).`,
  'review-too-many-notes': ({ name }) => `${name} holds more notes than anybody plays in one attempt.`,
  'review-no-such-step': ({ attempt }) =>
    `A remark on attempt ${attempt} hangs on a step that its exercise does not have.`,
  'review-unwritable': ({ place, detail }) => `This review cannot be written: ${place}: ${detail}`,
  'review-sound-too-long': 'A sound is too long for a review. Cut it, or send the review without it.',
  'review-too-large': 'This review is too large for one file. Leave out the sound of some attempts.',
  'review-for-teacher':
    'It holds attempts that somebody sends to a teacher. A teacher opens it on the page “For teachers”.',
  'review-for-student': 'This is a review for a student, who opens it in the journal.',
  'no-levels': 'This file holds no levels of Evenfall; yours are as they were.',
  'levels-newer':
    'These levels were written by a newer version. Bring this page up to date, then import them.',
  'no-music': 'It holds no music that is read here: MusicXML, MIDI, ABC, or passages that Evenfall wrote.',
  'music-damaged':
    'It is damaged, or not as such files are written. Write it out once more, then open it again.',
  'music-newer':
    'These passages were written by a newer version. Bring this page up to date, then open them.',
  'music-entities': 'It defines entities of its own, which no music needs. It is not opened.',
  'music-timewise': 'It is MusicXML by time, which is hardly in use. Write it out by parts (score-partwise).',
  'music-grace': () =>
    'It has grace notes, for which no moment is written. Take them out, or choose other bars.',
  'music-transposing': 'It is written for a transposing instrument. Write it out as it sounds.',
  'music-no-pitches': () => 'It holds notes without pitch, as drums do. A piano cannot play them.',
  'music-no-notes': 'There are no notes in it, or not in these bars.',
  'music-no-beats': 'Its times are told in frames of film and not in beats. Write it out in beats.',
  'music-between-keys': () =>
    'It has notes between the keys of a piano, as quarter tones are. Take them out, or choose other bars.',
  'music-endings': () =>
    'It has a first and a second ending, of which each time one is played. Choose bars with one of them.',
  'music-one-moment': 'All of it is struck at one moment; a passage needs two moments at least.',
  'music-beyond-keys': 'It goes beyond the keys of a piano, which reach from A0 to C8.',
  'music-unplayable':
    'It is no passage for a piano: there are more than ten keys at once, or more notes or longer bars than a passage can have.',
  'music-too-large': ({ mostMb }) => `It is larger than ${mostMb} MB, which is not opened here.`,
  'music-too-long': ({ bars, most }) => `It has ${bars} bars; a passage has up to ${most}. Say which bars.`,
  'music-no-bars': ({ from, to, bars }) => `There are no bars ${from} to ${to} in it; it has ${bars}.`,
  'music-staves': ({ staves }) => `It has ${staves} staves; a passage has one or two.`,
  'no-journal': 'This file is no journal of Evenfall.',
  'journal-damaged': 'This file is no journal of Evenfall, or it is damaged from its beginning.',
  'journal-too-much': 'This file holds more than any journal can.',
  'journal-newer': 'This journal was written by a newer version. Bring this page up to date, then import it.',
  'journal-breaks-off': 'The file breaks off or is damaged; what came before is in the journal.',
  'journal-no-sound': 'It is no sound that can be read; the report is kept without it.',
  'journal-too-large': 'It is too large.',
  'journal-other': 'It belongs to no journal.',
  'levels-damaged': ({ place }) =>
    `What the file says of the levels is not in order (${place}); yours are as they were.`,
  'journal-attempt': ({ place }) => `What it says of the attempt is not in order (${place}).`,
  'journal-and-more': ({ more }) => `… and ${more} more.`,
  'microphone-denied':
    'The microphone is not allowed. Allow it for this page in the browser (the sign beside the address) and in the ' +
    'device’s own settings, then try again. You can also open a recording instead.',
  'microphone-none': 'No microphone was found. Connect one, or open a recording instead.',
  'microphone-busy': 'The microphone is taken by another program or page. Close that one, then try again.',
  'microphone-unsupported':
    'This browser cannot record here. Open the page over https in a current browser, or open a recording instead.',
  'microphone-mute':
    'The sound of this browser does not start. Some start it only with a loudspeaker or headphones: connect some, then try again.',
  'microphone-gone':
    'The microphone is gone: unplugged, or taken by the system. What was heard until then is kept. Connect it again, then start listening again.',
  'microphone-silenced':
    'Another app has taken the microphone. Listening goes on when that app gives it back.',
  'microphone-asleep':
    'Listening has stopped because the screen was locked or a call came in. Touch the page to go on.',
  'microphone-back': 'The microphone is back; listening goes on.',
  'connect-again': 'Connect it again, then record.',
  'sound-lost': ({ lostSec }) => tellNotice({ notice: 'sound-lost', lostSec }),
  'no-room': ({ keeper }) => NO_ROOM[keeper],
  'used-by-newer': ({ keeper }) =>
    `A newer version of this page has the ${keeper} open. Close all its windows and open it again.`,
  'keeps-nothing': ({ keeper }) => KEEPS_NOTHING[keeper],
  'not-kept': ({ keeper, because }) => `The ${keeper} could not be used: ${tell(because)}`,
  'other-window-older':
    'Another window has an older version of this page open. Close it, then open this page again.',
  'listening-not-loaded': 'The listening part of the page could not be loaded.',
  'sorting-not-loaded': 'The listening part of the page could not be loaded, or ran out of memory.',
  'analysis-called-off': 'The analysis was called off.',
  'sorting-called-off': 'The sorting was called off.',
  'no-picture': 'This browser could not make the picture.',
  'not-encoded': 'The sound could not be packed.',
  'page-closed': 'The page was closed.',
  'helper-not-started': 'The helper could not be started.',
  'helper-broke-down': "The program broke down on it: perhaps it is too long for this machine's memory.",
  'not-listened-to': 'It could not be listened to, through a fault of this page.',
  'no-end': `It came to no end and was given up: it is damaged, or of a kind on which this program gets stuck. Send it again. ${CONVERT}`,
  'not-worked-out': ({ because }) => `This attempt could not be worked out. ${tell(because)}`,
  'file-not-made': ({ because }) => `The file could not be made. ${tell(because)}`,
  'not-passed-on': ({ because }) =>
    `The system could not pass it on. Save the file, then send it yourself. (${tell(because)})`,
  'not-reported': ({ notice }) => tellNotice(notice),
  'system-refuses': ({ code }) => SYSTEM[code] ?? `It could not be read (${code}).`,
  'own-fault':
    'The analysis failed through a fault of this program. NODE_DEBUG=evenfall in front of the command shows where.',
  unforeseen: ({ detail }) => `Something went wrong that was not foreseen: ${detail}`,
});
