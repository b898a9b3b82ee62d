/** The help of each command, and of all. */

const CHOICE = `      --key KEY            "C major" ... "B major", "C minor" ... with # or b
      --form FORM          arpeggio, triads, broken-triads, progression, scale, or
                           another that "exercises" lists
      --hands HANDS        left, right, together
      --octaves N          1 to 4, for arpeggio and scale; 1 if not said
      --minor-scale KIND   natural, harmonic, melodic; harmonic if not said
      --fingering NAMES    other fingers, e.g. second-first,thumbs-together; "exercises"
                           with --key and --form lists those that there are
      --notes-a-beat N     1, 2, 3, 4 or 6, for scales and arpeggios
      --register REGISTER  1-up to 3-up, 1-down to 3-down: octaves from where books
                           print it`;

const FILES = `FILE is WAV, AIFF, CAF, FLAC, MP3, Ogg (Opus, Vorbis), WebM or a video
with such sound; - is standard input. Several files are done one after the other;
one that cannot be read does not stop the rest.`;

const EXIT_CODES = `Exit codes: 0 analysed, 2 wrong usage, 3 a file cannot be read or decoded,
4 no playing found in it. Of several files the worst.`;

const PASSAGE = `      --exercise FILE      a passage of your own instead: MusicXML, MIDI, ABC, or
                           passages that Evenfall wrote; up to 16 bars
      --bars M-N           these bars of it, where FILE is longer
      --passage N          which one, where FILE holds several; 1 if not said`;

export const HELP = {
  analyse: `evenfall analyse FILE... [options]

Says what was played in a recording of an acoustic piano, and how evenly.
Without --key, --form and --hands the exercise is recognised from the sound.

${CHOICE}
${PASSAGE}
      --among FILE         recognise it among the passages of your own in FILE too
      --stretch STRETCH    only these steps were to be practised, e.g. 4-9;
                           up, down: the way up or down alone
      --times N            so often in a row, 1 to 12; 1 if not said
      --rhythm RHYTHM      even, long-short, short-long, groups-of-2 (3, 4, 6),
                           stop-before-crossings, stop-on-each-beat, stop-on-each-step,
                           prepared-silently, one-note-more
      --blocked            each hand position as one chord
      --touch TOUCH        legato, detached, staccato
      --loudness LOUDNESS  p, mf, f, growing, fading, accents-of-2 (3, 4, 6),
                           left-over-right, right-over-left
      --ladder N           so much faster each time it is done, until it is uneven
      --as-chosen          measure that, even if it was surely another that was played
      --bpm N              tempo aimed at, beats a minute
      --even N             variation of time that is even at seven notes a second, in
                           per cent, 2 to 30; 8 if not said. Other tempi follow
      --piano FILE         what is known of this piano, kept from call to call;
                           after hands alone both together are heard better, and
                           which hand you said (--hands) makes it the likelier one
      --levels FILE        a teacher's levels, as the journal saves them: how fast the
                           exercise is to be before it is called ready
      --language LANGUAGE  en, de; en if not said
      --json               one JSON object a file ("evenfall-report") instead of words
      --list LIST          more files, one a line; - is standard input
      --lines OUT.jsonl    instead: one JSON object a file, as soon as it is done, each
                           by itself; goes on where it stopped; - prints it
      --shard K/N          of --lines only this part, e.g. 3/16
      --force              write over a file that evenfall did not write
  -q, --quiet              no progress and no remarks on stderr

${FILES}

${EXIT_CODES}`,
  desk: `evenfall desk FOLDER... [options]

Sorts a pile of recordings: splits each into its attempts, recognises and measures
them, and lists them student by student, with what changed since the last attempt
at the same exercise. FOLDER may also be a recording or a zip of recordings; at
most 200 recordings at once. What was sorted once is kept and not done again.

      --csv OUT.csv        a table as well, one row an attempt; - prints it instead
      --html OUT           pages to read in a browser as well, from OUT/index.html on
      --lines OUT.jsonl    instead: one JSON object a recording, as soon as it is done,
                           any number of them; goes on where it stopped; - prints it
      --shard K/N          of --lines only this part, e.g. 3/16
      --list FILE          more paths, one a line; - is standard input
      --among FILE         recognise it among the passages of your own in FILE too
      --students FILE      who is known, a line a student: "Mara Lind: mara, ML";
                           "-72 cents" among them: how far off her piano stands
      --force              write over a file that evenfall did not write
      --json               one JSON object ("evenfall-desk") instead of words
      --bpm N              tempo aimed at, beats a minute
      --even N             variation of time that is even at seven notes a second, in
                           per cent, 2 to 30; 8 if not said. Other tempi follow
      --workers N          recordings sorted at the same time; as a rule one a core
      --fresh              sort all anew
      --language LANGUAGE  of all that is said: en, de; en if not said
  -q, --quiet              no progress and no remarks on stderr

Student: the name in the folder below FOLDER, else in the file's name ("Mara - D
major.m4a", "Scale D - Mara"), else in FOLDER's; --students tells who is meant by
it. A copy is listed as what it is. Day: by the name of the file, else by its own
time. The recordings are only read. Ctrl-C stops; the same command goes on.

${EXIT_CODES}`,
  transcribe: `evenfall transcribe FILE... [options]

Says which keys were heard and when, whatever was played.

      --json               one JSON object a file ("evenfall-notes")
      --language LANGUAGE  en, de; en if not said
      --midi OUT.mid       write the notes to a MIDI file; - is standard output
      --as-exercise OUT.json
                           lay what was played once, slowly, on a staff, as a passage
                           for --exercise; - is standard output. With it:
      --bpm BPM            about how fast, quarter notes a minute; 50 if not said;
                           free: each note or chord becomes a quarter note
      --time TIME          its metre, e.g. 3/4; 4/4 if not said
      --hands HANDS        left, right, together (split by register); together if not said
      --title TITLE        what it is called; the file's name if not said
      --force              write over a file that evenfall did not write
  -q, --quiet              no progress and no remarks on stderr

${FILES}

${EXIT_CODES}`,
  review: `evenfall review FILE... [options]

Prints what a review says, or what a student has sent: the words, each attempt with
its verdict and the remarks on it, and what is to be practised. A file that is no
review, or not in order, is refused as a whole, with the reason.

      --json               one JSON object a file ("evenfall-review"), without its sounds
      --html OUT.html      write the page that opens in any browser, without a
                           network; - is standard output
      --force              write over a file that evenfall did not write
      --language LANGUAGE  en, de; en if not said

FILE is a review or attempts sent by Evenfall; - is standard input.

Exit codes: 0 read, 2 wrong usage, 3 a file is refused or cannot be read.`,
  exercises: `evenfall exercises [options]

Lists what can be practised; with --key the facts of a key; with --key and
--form an exercise note by note, with its fingers.

${CHOICE}
${PASSAGE}
      --language LANGUAGE  en, de; en if not said
      --json               as JSON`,
  all: `evenfall listens to recordings of an acoustic piano exercise and says exactly what
was played and how evenly.

  evenfall analyse FILE... [--key KEY --form FORM --hands HANDS] [--json]
  evenfall desk FOLDER... [--csv OUT.csv] [--html OUT] [--json]
  evenfall transcribe FILE... [--json] [--midi OUT.mid] [--as-exercise OUT.json]
  evenfall review FILE... [--json] [--html OUT.html]
  evenfall exercises [--key KEY [--form FORM]]
  evenfall COMMAND --help [--language de]
  evenfall --version

${EXIT_CODES}`,
};

export type Help = typeof HELP;
