import type { Messages } from '../english/messages.ts';

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;
const tryHelp = (command: string): string => `Versuch: evenfall ${command}--help --language de`;

const UNWRITABLE: Readonly<Record<string, string>> = {
  EACCES: 'Dort ist es nicht erlaubt',
  EPERM: 'Dort ist es nicht erlaubt',
  EROFS: 'Dort lässt sich nichts schreiben',
  ENOSPC: 'Dort ist kein Platz mehr',
  EDQUOT: 'Dort ist kein Platz mehr',
  EISDIR: 'Es ist ein Ordner',
  ENOTDIR: 'Sein Ordner ist eine Datei',
  EEXIST: 'Sein Ordner ist eine Datei',
};

export const MESSAGES: Messages = {
  standardOutput: 'Standardausgabe',
  standardInput: 'Standardeingabe',
  beatsAMinute: (bpm) => `${bpm} Schläge in der Minute`,
  dateLocale: 'de-DE',
  didYouMean: (word) => ` Meinst du „${word}“?`,
  and: 'und',
  usage: {
    nothingToDo: `Nichts zu tun. ${tryHelp('')}`,
    noCommand: (name, commands, hint) =>
      `„${name}“ ist kein Befehl; es gibt ${commands.join(', ')}.${hint} ${tryHelp('')}`,
    noOption: (command, option, hint) =>
      `${command} hat keine Option ${option}.${hint} ${tryHelp(`${command} `)}`,
    optionWithout: (command, option) => `Option ${option}: Ihre Angabe fehlt. ${tryHelp(`${command} `)}`,
    optionWith: (command, option) => `Option ${option} nimmt keine Angabe. ${tryHelp(`${command} `)}`,
    needsFolder: `desk braucht einen Ordner mit Aufnahmen. ${tryHelp('desk ')}`,
    needsReview: `review braucht eine Rückmeldung, oder - für die Standardeingabe. ${tryHelp('review ')}`,
    needsFile: (command) =>
      `${command} braucht mindestens eine Klangdatei, oder - für die Standardeingabe. ${tryHelp(`${command} `)}`,
    oneForOne: (option, file, what, files) =>
      `${option} ${file} kann eine ${what === 'review' ? 'Rückmeldung' : 'Aufnahme'} enthalten, angegeben sind aber ${files} Dateien. Gib eine an.`,
    overInput: (file) =>
      `${file} ist eine Aufnahme oder ein Ordner, der gelesen wird; das wird nie überschrieben. Wähl einen anderen Namen.`,
    overForeign: (file) =>
      `${file} gibt es schon, und evenfall hat es nicht geschrieben. Wähl einen anderen Namen, oder überschreib es mit --force.`,
    oneToStdout: 'Die Standardausgabe (-) fasst nur eines. Lass eine der Optionen weg.',
    noShard: (text) =>
      `--shard ${text} ist kein Teil von --lines. Schreib z. B. --lines 3.jsonl --shard 3/16, von 1/16 bis 16/16.`,
    linesAlone: '--lines nennt jede Aufnahme für sich: Lass --json, --csv und --html weg.',
    foldersNeedNames: '--html von desk schreibt mehrere Seiten: Nenn einen Ordner.',
    inputTwice: 'Die Standardeingabe (-) lässt sich nur einmal lesen. Gib sie einmal an.',
    oneWordMore: (word) =>
      `„${word}“ ist ein Wort zu viel: exercises nimmt nur Optionen, etwa --key "D major".`,
    alone: (option, needed) =>
      `${option} allein sagt nicht, welche Übung es ist: Gib ${needed.join(' und ')} dazu, ` +
      'oder lass sie alle weg, dann wird sie erkannt.',
    needsExercise: (option) => `${option} geht nur mit --exercise FILE.`,
    besideExercise: (option) =>
      `--exercise FILE sagt, was gespielt wird: Lass ${option} weg. --hands geht damit.`,
    notForHands: (hands) => `--hands ${hands}: Dafür steht in der Stelle nichts zu spielen.`,
    noPassage: (number, file, passages) =>
      `--passage ${number}: ${file} enthält ${many(passages, 'Stelle', 'Stellen')}.`,
    needsAsExercise: (option) => `${option} geht nur mit --as-exercise OUT.json.`,
    noTime: (text) => `--time "${text}" ist keine Taktart. Schreib etwa 4/4, 3/4 oder 6/8.`,
    noBars: (text) => `--bars "${text}" sind keine Takte. Schreib etwa 5-8 oder 5.`,
    addKey: 'Gib --key dazu, etwa --key "D major", um eine Übung Ton für Ton zu sehen.',
    noKey: (text, hint) =>
      `--key "${text}" ist keine Tonart.${hint} Schreib etwa "D major", "F# minor" oder "Bb major".`,
    noStretch: (text, steps) =>
      `--stretch "${text}" ist kein Ausschnitt dieser Übung. Schreib zwei ihrer Stellen, 1 bis ${steps}, etwa 1-${Math.min(8, steps)}, oder up oder down, wo sie umkehrt.`,
    notBlocked: '--blocked braucht eine einzelne Hand und eine Übung, deren Töne einzeln kommen.',
    needsBothHands: (option) => `${option} braucht --hands together.`,
    noWord: (option, text, accepted, hint) =>
      `${option} "${text}" gibt es nicht, nur ${accepted.join(', ')}.${hint}`,
    noNumber: (option, text, whole, least, most) =>
      `${option} ${text} muss eine ${whole ? 'ganze ' : ''}Zahl von ${least} bis ${most} sein.`,
    noMinorScale: (form, key) =>
      `--minor-scale passt nicht zu ${form} in ${key}; nur Tonleitern einer Molltonart haben eine. Lass es weg.`,
    noFingering: (name, form, key, accepted) =>
      accepted.length === 0
        ? `--fingering: ${form} in ${key} hat für diese Hände nur die üblichen Finger. Lass es weg.`
        : `--fingering ${name} gibt es für ${form} in ${key} und diese Hände nicht, nur ${accepted.join(', ')}.`,
    noNotesABeat: (form, accepted) => `--notes-a-beat: ${form} hat ${accepted.join(', ')}.`,
    beyondKeyboard: (register) => `--register ${register}: Das liegt jenseits der Tastatur.`,
    oneOctave: (form) => `--octaves: ${form} hat immer 1. Nimm 1, oder wähl arpeggio oder scale.`,
    tooManyRecordings: (count, most) =>
      `Es sind ${count} Aufnahmen; höchstens ${most} werden auf einmal sortiert. Nenn einige der Ordner darin.`,
  },
  problems: {
    noPlaying: (why) => `Darin war kein Spiel zu finden. ${why}`.trim(),
    noPassage: 'Darin ist keine Stelle: weniger als zwei Töne oder Akkorde nacheinander.',
    noExercise: (notes, why) =>
      `${many(notes, 'Ton war', 'Töne waren')} zu hören, aber keine Übung darin. ${why}`,
    nearest: 'Was am nächsten kommt:',
    howToChoose: 'Auf der Befehlszeile: --key, --form und --hands.',
    unwritable: (code) =>
      `Das ließ sich nicht schreiben: ${UNWRITABLE[code] ?? `Das System lehnt es ab (${code})`}. Wähl einen anderen Ort.`,
    pianoUnreadable: 'Sie lässt sich nicht lesen. Nenn mit --piano eine andere Datei.',
    noPiano:
      'Sie enthält nichts, was man von einem Klavier weiß. Nenn mit --piano eine andere Datei, oder eine, die es noch nicht gibt.',
    nothingPiped: 'In die Standardeingabe kommt nichts. Gib eine Datei an, oder leite eine hinein.',
    noRecording: 'Darin ist keine Aufnahme.',
  },
  report: {
    chosen: 'Gewählt',
    asChosen: (title) => `${title}; --as-chosen misst das`,
    hand: 'Hand',
    handOpen: (likelier, other, options) =>
      `nicht bekannt, sie ist nicht zu hören; gemessen als die ${likelier}, die nach der Lage wahrscheinlicher ist. Die ${other}: ${options}`,
    hands: { left: 'linke', right: 'rechte' },
  },
  transcribe: {
    head: '  Zeit/s  Taste  Pegel/dB   beendet/s sicher/%',
    sum: (notes, a4Hz, cents) => `${many(notes, 'Ton', 'Töne')}; A4 = ${a4Hz} Hz ± ${cents} Cent`,
    sound: (finding) => `Klang: ${finding}`,
  },
  desk: {
    progress: (done, of) => `${done} von ${of} Aufnahmen`,
    stopped: (done, of) =>
      `Angehalten. ${done} von ${of} Aufnahmen sind sortiert und aufgehoben; derselbe Befehl macht dort weiter.`,
    passedOver: (files) => `${many(files, 'andere Datei wurde', 'andere Dateien wurden')} übergangen.`,
    newNames: (file, names) =>
      `Nicht in ${file}, und so aus Ordnern und Dateinamen genommen: ${names.join(', ')}. Trag sie ein, oder schreib sie hinter den Doppelpunkt derer, denen sie gehören.`,
    noName: 'ohne Namen',
    cannotTell: 'welche Übung, ist nicht zu sagen',
    otherPlaying: 'anderes Spiel',
    likeliest: (readings) => `Am wahrscheinlichsten: ${readings.join('; oder ')}.`,
    sum: (files, attempts, students) =>
      `${many(files, 'Aufnahme', 'Aufnahmen')}, ${many(attempts, 'Versuch', 'Versuche')}${students === 0 ? '' : ` von ${students === 1 ? 'einer Person' : `${students} Personen`}`}`,
    notRecognised: (stretches) => `${many(stretches, 'Stelle', 'Stellen')} mit Spiel nicht erkannt`,
    withoutPlaying: (files) => `${files} ohne Spiel`,
    unread: (files) => `${files} nicht lesbar`,
    title: 'Aufnahmen',
    notListed: 'Nicht dabei',
    sinceBefore: 'Seit dem Versuch davor',
    since: (day) => `Seit dem ${day}`,
    fastest: (title, tempo, least) =>
      `Am schnellsten noch gleichmäßig, ${title}: ${least ? `mindestens ${tempo}` : tempo}.`,
    asBefore: 'wie zuvor',
    change: (what, now, before) => `${what}, ${now} (zuvor ${before})`,
    changes: {
      mistakes: { better: 'weniger Fehler', worse: 'mehr Fehler' },
      evenness: { better: 'gleichmäßiger', worse: 'weniger gleichmäßig' },
      crossings: {
        better: 'weniger verspätete Unter- und Übersätze',
        worse: 'mehr verspätete Unter- und Übersätze',
      },
      spread: { better: 'Akkorde mehr zugleich', worse: 'Akkorde weniger zugleich' },
      loudness: { better: 'Lautstärke gleichmäßiger', worse: 'Lautstärke weniger gleichmäßig' },
      tempo: { better: 'schneller', worse: 'langsamer' },
    },
  },
  review: {
    review: (student) => (student === '' ? 'Eine Rückmeldung' : `Eine Rückmeldung für ${student}`),
    attempts: (student) => (student === '' ? 'Versuche' : `Versuche von ${student}`),
    from: (teacher) => `von ${teacher}`,
    to: (teacher) => `an ${teacher}`,
    toPractise: 'Zum Üben',
    played: (day) => `gespielt am ${day}`,
    withSound: 'mit Klang',
    withoutSound: 'ohne Klang',
    takenFor: (title) => `Erkannt als: ${title}; die Lehrkraft hat die Übung gewählt.`,
    corrects: (place, verdict, why) => `Die Lehrkraft sagt (${place}): ${verdict}. ${why}`.trimEnd(),
    verdicts: {
      correct: 'war richtig',
      wrong: 'war falsch',
      missed: 'fehlte',
      'not-played': 'wurde nicht gespielt',
      mistaken: 'das stimmt nicht',
    },
    example: 'Deine Lehrkraft hat es zum Beispiel vorgespielt; zu hören auf der Seite.',
    spoken: '(gesprochen)',
    names: {
      'your recording': 'deine Aufnahme',
      'example attempt': 'Beispiel',
      'at the piano': 'am Klavier',
    },
    wholeAttempt: 'Versuch',
    stretch: (from, to, first, last) => `Töne ${from} bis ${to} (${first} bis ${last})`,
    extraNote: (sec) => `Ton zu viel${sec === '' ? '' : ` bei ${sec} s`}`,
    note: (number, name) => `Ton ${number} (${name})`,
    atTempo: (bpm) => `mit ${bpm} Schlägen in der Minute`,
    inARow: (times) => (times === 1 ? 'einmal' : `${times}-mal hintereinander`),
    evenness: (percent) => `Schwankung höchstens ${percent} %`,
    asUsual: 'wie üblich',
  },
  exercises: {
    forms: {
      arpeggio: (most) => `der Tonika-Dreiklang Ton für Ton, auf und ab, 1 bis ${most} Oktaven`,
      triads: () => 'der Tonika-Dreiklang mit Umkehrungen, eine Oktave auf und ab',
      'broken-triads': () => 'dieselben Akkorde gebrochen, je drei Töne',
      progression: () => 'I-IV-I-V7-I (i-iv-i-V7-i) in enger Lage',
      scale: (most) => `die Tonleiter auf und ab, 1 bis ${most} Oktaven (Moll: siehe --minor-scale)`,
      'dominant-seventh': (most) => `V7 Ton für Ton, auf und ab, 1 bis ${most} Oktaven`,
      'diminished-seventh': (most) =>
        `der verminderte Septakkord auf dem Leitton, Ton für Ton, 1 bis ${most} Oktaven`,
      chromatic: (most) => `alle zwölf Töne auf und ab vom Grundton, 1 bis ${most} Oktaven`,
      'five-finger': () => 'die ersten fünf Töne der Tonart auf und ab, für jeden Finger einer',
      'contrary-motion': (most) =>
        `beide Hände von einer Taste auseinander und zurück, 1 bis ${most} Oktaven`,
      'two-octaves-apart': (most) => `die Tonleiter, zwei Oktaven zwischen den Händen, 1 bis ${most} Oktaven`,
      'tenths-apart': (most) => `die Tonleiter, die rechte Hand eine Dezime höher, 1 bis ${most} Oktaven`,
      'sixths-apart': (most) => `die Tonleiter, die rechte Hand eine Sexte höher, 1 bis ${most} Oktaven`,
      'thirds-apart': (most) => `die Tonleiter, die rechte Hand eine Terz höher, 1 bis ${most} Oktaven`,
      'double-thirds': (most) => `die Tonleiter in Terzen, beide Töne in einer Hand, 1 bis ${most} Oktaven`,
      'double-sixths': (most) => `die Tonleiter in Sexten, beide Töne in einer Hand, 1 bis ${most} Oktaven`,
      'scale-in-octaves': (most) => `die Tonleiter, jede Hand in Oktaven, 1 bis ${most} Oktaven`,
      'arpeggio-first-inversion': (most) => `das Arpeggio von der Terz aus, 1 bis ${most} Oktaven`,
      'arpeggio-second-inversion': (most) => `das Arpeggio von der Quinte aus, 1 bis ${most} Oktaven`,
      'four-note-chords': () => 'die Dreiklänge, der tiefste Ton auch oben',
      'broken-four-note-chords': () => 'dieselben Akkorde gebrochen, je vier Töne',
      'cadence-fifth': () => 'I-IV-I-V-I, links der Bass, rechts die Akkorde, Quintlage',
      'cadence-octave': () => 'I-IV-I-V-I, links der Bass, rechts die Akkorde, Oktavlage',
      'cadence-third': () => 'I-IV-I-V-I, links der Bass, rechts die Akkorde, Terzlage',
      'cadence-seventh-fifth': () => 'I-IV-I-V7-I, links der Bass, rechts die Akkorde, Quintlage',
      'cadence-seventh-octave': () => 'I-IV-I-V7-I, links der Bass, rechts die Akkorde, Oktavlage',
      'cadence-seventh-third': () => 'I-IV-I-V7-I, links der Bass, rechts die Akkorde, Terzlage',
      'cadence-second-fifth': () => 'I-IV-ii6-V7-I, links der Bass, rechts die Akkorde, Quintlage',
      'cadence-second-octave': () => 'I-IV-ii6-V7-I, links der Bass, rechts die Akkorde, Oktavlage',
      'cadence-second-third': () => 'I-IV-ii6-V7-I, links der Bass, rechts die Akkorde, Terzlage',
    },
    noteByNote: 'Ton für Ton, mit Fingersatz:',
    otherFingers: 'Andere Finger',
    noSource: 'verbreitet, ohne Quelle',
    tables: (letters) => `in gedruckten Tabellen (${letters})`,
    signature: 'Vorzeichen',
    accidentals: { none: () => 'keine', sharps: (n) => `${n} Kreuze`, flats: (n) => `${n} Be` },
    scale: 'Tonleiter',
    minorScale: (kind) => ({ natural: 'natürlich', harmonic: 'harmonisch', melodic: 'melodisch' })[kind],
    triad: 'Dreiklang',
    step: 'Nr.',
    beat: 'Schlag',
    hand: { left: 'linke Hand', right: 'rechte Hand' },
    crossings: { 'thumb-under': 'Untersatz', 'over-thumb': 'Übersatz' },
  },
};
