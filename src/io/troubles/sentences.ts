export const CONVERT = 'Convert it to WAV, FLAC, MP3 or Ogg, then try again.';

/** What a file turned out to be that is no sound file, or sound of a kind that is not read here. */
export const OTHERS = {
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

/** Files that say in a header what sound they hold. */
export const A = { WAV: 'a WAV', AIFF: 'an AIFF', 'Core Audio': 'a Core Audio' } as const;

/** By what keeps something on this device. */
export const NO_ROOM = {
  journal:
    'There is no room left on this device for the journal. Export it, then let go of the sound of older attempts.',
  reviews:
    'There is no room left on this device for the review. Delete older reviews or the sound of older attempts, then open it again.',
  recordings:
    'There is no room left on this device for recordings. Make the reviews that are due, then delete older recordings.',
} as const;

export const KEEPS_NOTHING = {
  journal:
    'This browser keeps no journal here, as in a private window. Attempts are told, but not stored; save their sound.',
  reviews:
    'This browser keeps no reviews here, as in a private window. The review is shown, but not stored; keep its file.',
  recordings: 'This browser keeps no recordings here, as in a private window. Open it in an ordinary window.',
} as const;

/** Every trouble that has no values, with the way out where there is one. */
export const SENTENCES = {
  // Files of sound.
  'file-empty': 'The file is empty (0 bytes). Record or send it again.',
  'file-unknown': `It is not a sound file of a known kind, or it is damaged. ${CONVERT}`,
  'file-damaged': 'It could not be decoded: the file is damaged. Send it again.',
  'contents-damaged': 'Its contents are not in order: cut short or damaged. Send it again.',
  'end-cut-off':
    'The file was cut off on its way: its end, without which the rest cannot be read, is missing. Send it again.',
  'packet-list-missing': 'The file is cut short: the list that it is read by is missing. Send it again.',
  'sound-locked':
    'Its sound is locked: only the program that it was bought with can open it. Record it yourself.',
  'not-listened-to': 'It could not be listened to, through a fault of this page.',
  'no-end': `It came to no end and was given up: it is damaged, or of a kind on which this program gets stuck. Send it again. ${CONVERT}`,
  'helper-not-started': 'The helper could not be started.',
  'helper-broke-down': "The program broke down on it: perhaps it is too long for this machine's memory.",
  'own-fault':
    'The analysis failed through a fault of this program. NODE_DEBUG=evenfall in front of the command shows where.',
  'file-unreadable': 'It could not be read. Is it still where it was?',
  'file-gone': 'This recording is not there any more. Give it again.',
  'no-backup': 'It is no backup of the page for teachers.',
  'backup-newer': 'It was made by a newer Evenfall. Load this page anew, then bring it in again.',
  'backup-damaged': 'It is damaged, and nothing of it could be brought in. Take another one.',
  'attempt-gone':
    'This attempt is not on this device, or not any more. A recording that was opened can be opened again.',
  'ogg-without-sound': `It is an Ogg file without Opus, Vorbis or FLAC sound. ${CONVERT}`,
  'no-wav': 'It is no WAV file. Decode it first, or convert it to WAV.',
  'wav-header-short': 'The file is damaged: its beginning is cut short. Record or export it again.',
  'opus-header-senseless': `The beginning of its Opus sound makes no sense. ${CONVERT}`,
  'nothing-after-header': 'No sound follows its beginning: the file is cut short. Send or export it again.',
  'no-mp3-frame': 'No piece of the MP3 is whole: the file is cut short or damaged. Send it again.',
  'nothing-decoded': 'No sound could be read from it: the file is cut short or damaged. Send it again.',
  'no-sound-track': `There is no sound in it. ${CONVERT}`,
  'codec-unknown': `It holds a kind of sound that is not known here. ${CONVERT}`,
  // Zips.
  'zip-damaged': 'It is no zip file, or it is damaged or cut short. Send or save it again.',
  'zip-in-parts': 'It is one part of several. Pack it as one file.',
  'zip-locked': 'It is locked with a password. Pack it without one.',
  'zip-packed-otherwise': 'It is packed in a way that is not read here. Pack it as an ordinary zip.',
  'zip-overlaps': 'Its files lie over each other. It is not opened.',
  'zip-nameless': 'It holds a file without a usable name.',
  'zip-leads-elsewhere': 'It holds a file whose name would lead somewhere else.',
  'zip-member-gone': 'It is no longer in its archive.',
  // Reviews.
  'no-review': 'This file is no review of Evenfall. Choose the file that your teacher or student sent.',
  'review-newer':
    'This review was written by a newer version. Load this page anew, with a connection, then open it again.',
  'review-holds-other': 'It holds a file that belongs to no review.',
  'review-names-twice': 'It names one of its files twice.',
  'review-misses-file': 'One of its files is missing.',
  'review-sound-too-long': 'A sound is too long for a review. Cut it, or send the review without it.',
  'review-too-large': 'This review is too large for one file. Leave out the sound of some attempts.',
  'review-for-teacher':
    'It holds attempts that somebody sends to a teacher. A teacher opens it on the page “For teachers”.',
  'review-for-student': 'This is a review for a student, who opens it in the journal.',
  // Levels.
  'no-levels': 'This file holds no levels of Evenfall; yours are as they were.',
  'levels-newer':
    'These levels were written by a newer version. Load this page anew, with a connection, then import them.',
  // Files of music.
  'no-music': 'It holds no music that is read here: MusicXML, MIDI, ABC, or passages that Evenfall wrote.',
  'music-damaged':
    'It is damaged, or not as such files are written. Write it out once more, then open it again.',
  'music-newer':
    'These passages were written by a newer version. Load this page anew, with a connection, then open them.',
  'music-entities': 'It defines entities of its own, which no music needs. It is not opened.',
  'music-timewise': 'It is MusicXML by time, which is hardly in use. Write it out by parts (score-partwise).',
  'music-transposing': 'It is written for a transposing instrument. Write it out as it sounds.',
  'music-no-notes': 'There are no notes in it, or not in these bars.',
  'music-no-beats': 'Its times are told in frames of film and not in beats. Write it out in beats.',
  'music-one-moment': 'All of it is struck at one moment; a passage needs two moments at least.',
  'music-beyond-keys': 'It goes beyond the keys of a piano, which reach from A0 to C8.',
  'music-unplayable':
    'It is no passage for a piano: there are more than ten keys at once, or more notes or longer bars than a passage can have.',
  // The journal's file.
  'no-journal': 'This file is no journal of Evenfall; yours is as it was. Choose one that was exported here.',
  'journal-damaged': 'This file is no journal of Evenfall, or it is damaged from its beginning.',
  'journal-too-much': 'This file holds more than any journal can.',
  'journal-newer':
    'This journal was written by a newer version. Load this page anew, with a connection, then import it.',
  'journal-breaks-off': 'The file breaks off or is damaged; what came before is in the journal.',
  'journal-other': 'Something in the file that belongs to no journal was left out.',
  // The microphone.
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
  // The page and its helpers.
  'other-window-older':
    'Another window has an older version of this page open. Close it, then open this page again.',
  'listening-not-loaded': 'The listening part of the page could not be loaded.',
  'sorting-not-loaded': 'The listening part of the page could not be loaded, or ran out of memory.',
  'analysis-called-off': 'The analysis was called off.',
  'sorting-called-off': 'The sorting was called off.',
  'page-closed': 'The page was closed.',
  'no-picture': 'This browser could not make the picture.',
  'not-encoded': 'The sound could not be packed.',
} as const;
