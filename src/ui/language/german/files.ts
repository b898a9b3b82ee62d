/** What is said of files that do not open or not wholly (src/io/decode/), as in `sentences.ts`. */
export const FILE_SENTENCES: readonly (readonly [english: string, german: string])[] = [
  [
    'Convert it to WAV, FLAC, MP3 or Ogg, then try again.',
    'Wandle sie in WAV, FLAC, MP3 oder Ogg um, dann versuch es noch einmal.',
  ],
  [
    'The file is empty (0 bytes). Record or send it again.',
    'Die Datei ist leer (0 Bytes). Nimm sie noch einmal auf oder schick sie noch einmal.',
  ],
  [
    'It is not a sound file of a known kind, or it is damaged.',
    'Sie ist keine Klangdatei bekannter Art, oder sie ist beschädigt.',
  ],
  [
    'It could not be decoded: the file is damaged. Send it again.',
    'Sie ließ sich nicht lesen: Die Datei ist beschädigt. Schick sie noch einmal.',
  ],
  [
    'It is a MIDI file, which holds keys and no sound.',
    'Sie ist eine MIDI-Datei: Die enthält Tasten, keinen Klang.',
  ],
  ['It is a PDF document.', 'Sie ist ein PDF-Dokument.'],
  ['It is a JPEG picture.', 'Sie ist ein JPEG-Bild.'],
  ['It is a PNG picture.', 'Sie ist ein PNG-Bild.'],
  ['It is a ZIP archive: unpack it first.', 'Sie ist ein ZIP-Archiv: Pack es erst aus.'],
  ['It is a web page, not the file behind it.', 'Sie ist eine Webseite, nicht die Datei dahinter.'],
  ['It is AMR telephone sound.', 'Sie ist AMR-Telefonklang.'],
  ['It is Windows Media sound.', 'Sie ist Windows-Media-Klang.'],
  ['It is WavPack sound.', 'Sie ist WavPack-Klang.'],
  ['It is an AVI video.', 'Sie ist ein AVI-Video.'],
  ['It is an MPEG video.', 'Sie ist ein MPEG-Video.'],
  ['It is RealAudio sound.', 'Sie ist RealAudio-Klang.'],
  ['It is Monkey’s Audio sound.', 'Sie ist Monkey’s-Audio-Klang.'],
  ['It is Dolby sound.', 'Sie ist Dolby-Klang.'],
  ['It is DSD sound.', 'Sie ist DSD-Klang.'],
  ['It is Sun audio.', 'Sie ist Sun-Audio.'],
  [
    'It is a RAR archive, which is not opened here: pack a zip instead.',
    'Sie ist ein RAR-Archiv, das hier nicht geöffnet wird: Pack ein Zip.',
  ],
  [
    'It is a 7z archive, which is not opened here: pack a zip instead.',
    'Sie ist ein 7z-Archiv, das hier nicht geöffnet wird: Pack ein Zip.',
  ],
  [
    'It is an Ogg file without Opus, Vorbis or FLAC sound.',
    'Sie ist eine Ogg-Datei ohne Opus-, Vorbis- oder FLAC-Klang.',
  ],
  ['It is Opus sound with {} channels.', 'Sie ist Opus-Klang mit {} Kanälen.'],
  ['It is a WAV file with {} sound.', 'Sie ist eine WAV-Datei mit {}-Klang.'],
  [
    'It is a WAV file with packed sound of a rare kind.',
    'Sie ist eine WAV-Datei mit gepacktem Klang seltener Art.',
  ],
  ['It is a Core Audio file with {} sound.', 'Sie ist eine Core-Audio-Datei mit {}-Klang.'],
  [
    'It is a Core Audio file with packed sound of a rare kind.',
    'Sie ist eine Core-Audio-Datei mit gepacktem Klang seltener Art.',
  ],
  [
    'It is an AIFF file with packed sound of a rare kind.',
    'Sie ist eine AIFF-Datei mit gepacktem Klang seltener Art.',
  ],
  [
    'It is an AIFF file without any sound in it. Record or export it again.',
    'Sie ist eine AIFF-Datei ohne Klang darin. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'It is a Core Audio file without any sound in it. Record or export it again.',
    'Sie ist eine Core-Audio-Datei ohne Klang darin. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'The AIFF header is missing: the file is damaged. Record or export it again.',
    'Der AIFF-Kopf fehlt: Die Datei ist beschädigt. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'The Core Audio header is missing: the file is damaged. Record or export it again.',
    'Der Core-Audio-Kopf fehlt: Die Datei ist beschädigt. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'Its AIFF header makes no sense ({}): the file is damaged.',
    'Ihr AIFF-Kopf ergibt keinen Sinn ({}): Die Datei ist beschädigt.',
  ],
  [
    'Its Core Audio header makes no sense ({}): the file is damaged.',
    'Ihr Core-Audio-Kopf ergibt keinen Sinn ({}): Die Datei ist beschädigt.',
  ],
  [
    'Its list of packets is missing: the file is cut short. Send it again.',
    'Ihre Liste der Pakete fehlt: Die Datei ist abgeschnitten. Schick sie noch einmal.',
  ],
  [
    'The file was cut off on its way: its end, without which the rest cannot be read, is missing. Send it again.',
    'Die Datei wurde unterwegs abgeschnitten: Ihr Ende fehlt, ohne das sich der Rest nicht lesen lässt. Schick sie noch einmal.',
  ],
  [
    'Its sound is locked: only the program that it was bought with can open it. Record it yourself.',
    'Ihr Klang ist gesperrt: Nur das Programm, mit dem er gekauft wurde, kann ihn öffnen. Nimm ihn selbst auf.',
  ],
  [
    'It is a WAV file without any sound in it. Record or export it again.',
    'Sie ist eine WAV-Datei ohne Klang darin. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'The WAV header is cut short: the file is damaged. Record or export it again.',
    'Der WAV-Kopf ist abgeschnitten: Die Datei ist beschädigt. Nimm sie noch einmal auf oder gib sie noch einmal aus.',
  ],
  [
    'Its WAV header makes no sense ({}): the file is damaged.',
    'Ihr WAV-Kopf ergibt keinen Sinn ({}): Die Datei ist beschädigt.',
  ],
  ['({} channels, {} Hz, {} bits)', '({} Kanäle, {} Hz, {} Bit)'],
  ['Its Opus header makes no sense.', 'Ihr Opus-Kopf ergibt keinen Sinn.'],
  [
    'No sound follows the header: the file is cut short. Send or export it again.',
    'Auf den Kopf folgt kein Klang: Die Datei ist abgeschnitten. Schick sie noch einmal oder gib sie noch einmal aus.',
  ],
  [
    'No MP3 frame is whole in it: the file is cut short or damaged.',
    'Kein MP3-Stück darin ist ganz: Die Datei ist abgeschnitten oder beschädigt.',
  ],
  [
    'No sound could be decoded from it: the file is cut short or damaged.',
    'Daraus ließ sich kein Klang lesen: Die Datei ist abgeschnitten oder beschädigt.',
  ],
  [
    'It claims {} samples a second, which no recording has: the file is damaged.',
    'Sie gibt {} Abtastwerte in der Sekunde an, die keine Aufnahme hat: Die Datei ist beschädigt.',
  ],
  [
    'Its contents are not in order: cut short or damaged. Send it again.',
    'Ihr Inhalt ist nicht in Ordnung: abgeschnitten oder beschädigt. Schick sie noch einmal.',
  ],
  ['There is no sound in it.', 'Es ist kein Klang darin.'],
  [
    'It holds a kind of sound that is not known here.',
    'Sie enthält eine Art von Klang, die hier nicht bekannt ist.',
  ],
  [
    'It holds {} sound, which cannot be decoded here.',
    'Sie enthält {}-Klang, der hier nicht gelesen werden kann.',
  ],
  [
    'It is longer than {} minutes; the rest was left out. Cut it to hear the rest.',
    'Sie ist länger als {} Minuten; der Rest wurde weggelassen. Schneide sie, um den Rest zu hören.',
  ],
  [
    'Part of the file is missing or damaged: {} s of {} s were read.',
    'Ein Teil der Datei fehlt oder ist beschädigt: {} s von {} s wurden gelesen.',
  ],
  [
    'The sound changes its form after {} s; only what comes before was read.',
    'Der Klang ändert nach {} s seine Form; nur was davor kommt, wurde gelesen.',
  ],
  [
    'It has {} channels; the one that sounds most was taken.',
    'Sie hat {} Kanäle; genommen wurde der, auf dem am meisten klingt.',
  ],
  [
    'The file is damaged; what comes before the damage was read.',
    'Die Datei ist beschädigt; was vor dem Schaden kommt, wurde gelesen.',
  ],
  [
    'The recording has holes; they were filled with silence so that the timing stays true.',
    'Die Aufnahme hat Löcher; sie wurden mit Stille gefüllt, damit die Zeiten stimmen.',
  ],
  ['The file breaks off: {} s of {} s are there.', 'Die Datei bricht ab: {} s von {} s sind da.'],
  [
    'There is no room left on this device for recordings. Make the reviews that are due, then delete older recordings.',
    'Auf diesem Gerät ist kein Platz mehr für Aufnahmen. Mach die Rückmeldungen, die anstehen, dann lösch ältere Aufnahmen.',
  ],
  [
    'This browser keeps no recordings here, as in a private window. Open it in an ordinary window.',
    'Dieser Browser bewahrt hier keine Aufnahmen auf, wie in einem privaten Fenster. Öffne die Seite in einem gewöhnlichen.',
  ],
  [
    'A newer version of this page has the recordings open. Close all its windows and open it again.',
    'Eine neuere Version dieser Seite hat die Aufnahmen offen. Schließ alle ihre Fenster und öffne sie noch einmal.',
  ],
  ['The recordings could not be kept: {}', 'Die Aufnahmen ließen sich nicht aufbewahren: {}'],
  [
    'This is a review for a student, who opens it in the journal.',
    'Das ist eine Rückmeldung für eine Schülerin oder einen Schüler; geöffnet wird sie im Tagebuch.',
  ],
  [
    'This recording is not there any more. Give it again.',
    'Diese Aufnahme ist nicht mehr da. Gib sie noch einmal.',
  ],
];
