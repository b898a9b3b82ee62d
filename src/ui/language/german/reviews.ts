/** What is said of zip files and reviews that are refused (src/io/archive/, src/io/review/), as in `sentences.ts`. */
export const REVIEW_SENTENCES: readonly (readonly [english: string, german: string])[] = [
  [
    'This file is no review of Evenfall. Choose the file that your teacher or student sent.',
    'Diese Datei ist keine Rückmeldung von Evenfall. Wähl die Datei, die deine Lehrkraft oder dein Schüler geschickt hat.',
  ],
  [
    'This review was written by a newer version. Bring this page up to date, then open it again.',
    'Diese Rückmeldung stammt von einer neueren Version. Bring diese Seite auf den neuesten Stand, dann öffne sie noch einmal.',
  ],
  ['This review cannot be opened.', 'Diese Rückmeldung lässt sich nicht öffnen.'],
  [
    'This review is refused: {} in it is too large.',
    'Diese Rückmeldung wird nicht angenommen: {} darin ist zu groß.',
  ],
  [
    'This review is refused: {} Ask for the file once more.',
    'Diese Rückmeldung wird nicht angenommen: {} Bitte noch einmal um die Datei.',
  ],
  ['It holds a file that belongs to no review.', 'Sie enthält eine Datei, die zu keiner Rückmeldung gehört.'],
  ['It names one of its files twice.', 'Sie nennt eine ihrer Dateien zweimal.'],
  ['One of its files is missing.', 'Eine ihrer Dateien fehlt.'],
  ['{} in it is no sound.', '{} darin ist kein Klang.'],
  ['What it says of itself is not in order ({}).', 'Was sie von sich sagt, ist nicht in Ordnung ({}).'],
  ['{} is no report that can be shown ({}).', '{} ist kein Bericht, der gezeigt werden kann ({}).'],
  [
    '{} holds more notes than anybody plays in one attempt.',
    '{} enthält mehr Töne, als jemand in einem Versuch spielt.',
  ],
  [
    'A remark on attempt {} hangs on a step that its exercise does not have.',
    'Eine Bemerkung zu Versuch {} hängt an einer Stelle, die seine Übung nicht hat.',
  ],
  ['This review cannot be written: {}: {}', 'Diese Rückmeldung lässt sich nicht schreiben: {}: {}'],
  [
    'A sound is too long for a review. Cut it, or send the review without it.',
    'Ein Klang ist zu lang für eine Rückmeldung. Kürze ihn, oder schick sie ohne ihn.',
  ],
  [
    'This review is too large for one file. Leave out the sound of some attempts.',
    'Diese Rückmeldung ist zu groß für eine Datei. Lass den Klang einiger Versuche weg.',
  ],
  [
    'It is no zip file, or it is damaged or cut short. Send or save it again.',
    'Sie ist keine ZIP-Datei, oder sie ist beschädigt oder abgeschnitten. Schick oder speichere sie noch einmal.',
  ],
  [
    'It is larger than {} MB, which is not opened here.',
    'Sie ist größer als {} MB; das wird hier nicht geöffnet.',
  ],
  ['It holds {} files; up to {} are opened.', 'Sie enthält {} Dateien; bis zu {} werden geöffnet.'],
  [
    'It is one part of several. Pack it as one file.',
    'Sie ist ein Teil von mehreren. Pack sie als eine Datei.',
  ],
  [
    'It is locked with a password. Pack it without one.',
    'Sie ist mit einem Passwort verschlossen. Pack sie ohne Passwort.',
  ],
  [
    'It is packed in a way that is not read here. Pack it as an ordinary zip.',
    'Sie ist auf eine Art gepackt, die hier nicht gelesen wird. Pack sie als gewöhnliches ZIP.',
  ],
  [
    '{} is larger than {} MB, which is not opened here.',
    '{} ist größer als {} MB; das wird hier nicht geöffnet.',
  ],
  [
    '{} would unpack to far more than any recording or text. It is not opened.',
    '{} wäre ausgepackt weit größer als jede Aufnahme und jeder Text. Das wird nicht geöffnet.',
  ],
  [
    'It would unpack to more than {} MB, which is not opened here.',
    'Sie wäre ausgepackt größer als {} MB; das wird hier nicht geöffnet.',
  ],
  ['It holds two files named {}.', 'Sie enthält zwei Dateien mit dem Namen {}.'],
  [
    'Its files lie over each other. It is not opened.',
    'Ihre Dateien liegen übereinander. Sie wird nicht geöffnet.',
  ],
  ['It holds a file without a usable name.', 'Sie enthält eine Datei ohne brauchbaren Namen.'],
  [
    'It holds a file whose name would lead somewhere else.',
    'Sie enthält eine Datei, deren Name woandershin führen würde.',
  ],
  [
    '{} is damaged in it. Send or save it again.',
    '{} ist darin beschädigt. Schick oder speichere sie noch einmal.',
  ],
];
