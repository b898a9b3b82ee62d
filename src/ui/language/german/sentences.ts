/**
 * Sentences that the engine and the devices say by themselves, in plain English and with their figures, and the same in
 * German; {} stands for a figure or a name, in the same order. A sentence that is not here is shown as it came:
 * tests/ui/language/sentences.test.ts makes the engine say them all.
 */
export const SENTENCES: readonly (readonly [english: string, german: string])[] = [
  // What was found about the sound (src/engine/listen/findings.ts).
  [
    'The recording lasts {} s; record from before the first note to after the last.',
    'Die Aufnahme dauert {} s; nimm von vor dem ersten bis nach dem letzten Ton auf.',
  ],
  [
    'The recording is silent; check that the right microphone is chosen and not muted.',
    'Die Aufnahme ist still; sieh nach, ob das richtige Mikrofon gewählt und nicht stumm ist.',
  ],
  [
    '{} samples were no numbers and were taken as silence; decode or record it again.',
    '{} Abtastwerte waren keine Zahlen und gelten als Stille; dekodiere oder nimm es noch einmal auf.',
  ],
  [
    'The loudest moment reaches only {} dB of full scale; put the microphone nearer or turn its level up.',
    'Die lauteste Stelle erreicht nur {} dB, gemessen an der Vollaussteuerung; stell das Mikrofon näher oder seinen Pegel höher.',
  ],
  [
    'The sound was cut off {} times because it was too loud for the microphone; put it further away or turn its level down.',
    'Der Klang ist {}-mal abgeschnitten, weil er für das Mikrofon zu laut war; stell es weiter weg oder seinen Pegel tiefer.',
  ],
  [
    'One of the {} channels carries no sound; the other was used.',
    'Einer der {} Kanäle ist ohne Klang; der andere wurde genommen.',
  ],
  [
    'The channels cancel each other (their mean loses {} dB); the stronger one was used alone.',
    'Die Kanäle löschen einander aus (ihr Mittel verliert {} dB); nur der stärkere wurde genommen.',
  ],
  [
    'The playing stands only {} dB above the noise of the room; close the window or put the microphone nearer.',
    'Das Spiel liegt nur {} dB über den Geräuschen des Raums; schließ das Fenster oder stell das Mikrofon näher.',
  ],
  [
    'Mains hum at {} Hz lies {} dB below the playing; move the device away from chargers and cables.',
    'Netzbrummen bei {} Hz liegt {} dB unter dem Spiel; stell das Gerät weg von Ladegeräten und Kabeln.',
  ],
  [
    'A voice seems to sound at {} places; notes under it may be missed.',
    'An {} Stellen scheint eine Stimme zu klingen; Töne darunter können verloren gehen.',
  ],
  [
    'There is sound, but nothing in it behaves like a struck piano string; check that the piano was recorded.',
    'Es ist Klang da, aber nichts darin verhält sich wie eine angeschlagene Klaviersaite; sieh nach, ob das Klavier aufgenommen wurde.',
  ],
  ['No piano notes were heard in it.', 'Darin waren keine Klaviertöne zu hören.'],
  [
    'The notes fit no exercise of the set well enough to say which. Choose the exercise and its key.',
    'Die Töne passen zu keiner Übung der Sammlung gut genug, um zu sagen, zu welcher. Wähl die Übung und ihre Tonart.',
  ],
  // Why a figure could not be had (src/engine/report/measures/).
  ['no note could be judged', 'kein Ton war zu beurteilen'],
  [
    'needs two keys struck by the thumb and two by others',
    'braucht zwei Tasten des Daumens und zwei anderer Finger',
  ],
  ['needs {} right notes; there is {}', 'braucht {} richtige Töne; es gibt {}'],
  ['needs {} right notes; there are {}', 'braucht {} richtige Töne; es gibt {}'],
  ['this exercise has no turn', 'diese Übung hat keinen Wendepunkt'],
  [
    'the interval after the turn was not heard whole',
    'der Abstand nach dem Wendepunkt war nicht ganz zu hören',
  ],
  ['the first interval was not heard whole', 'der erste Abstand war nicht ganz zu hören'],
  ['the last interval was not heard whole', 'der letzte Abstand war nicht ganz zu hören'],
  ['no crossing was heard whole', 'kein Unter-/Übersatz war ganz zu hören'],
  ['this exercise has no crossing', 'diese Übung hat keinen Unter-/Übersatz'],
  ['needs two chords of one hand', 'braucht zwei Akkorde einer Hand'],
  [
    'too few notes between the ends to compare with',
    'zu wenige Töne zwischen den Enden, um damit zu vergleichen',
  ],
  ['the damping of most notes cannot be heard', 'bei den meisten Tönen ist nicht zu hören, wann sie enden'],
  ['the damping of this chord cannot be heard', 'bei diesem Akkord ist nicht zu hören, wann er endet'],
  [
    'the damping of most chords cannot be heard',
    'bei den meisten Akkorden ist nicht zu hören, wann sie enden',
  ],
  ['needs two chords of three notes', 'braucht zwei Akkorde aus drei Tönen'],
  ['needs three right notes of each hand', 'braucht drei richtige Töne jeder Hand'],
  ['needs three changes of chord', 'braucht drei Akkordwechsel'],
  ['needs two chords', 'braucht zwei Akkorde'],
  ['needs three steps with both hands heard', 'braucht drei Stellen, an denen beide Hände zu hören sind'],
  [
    'needs {} unbroken intervals between steps; there is {}',
    'braucht {} Abstände ohne Unterbrechung; es gibt {}',
  ],
  [
    'needs {} unbroken intervals between steps; there are {}',
    'braucht {} Abstände ohne Unterbrechung; es gibt {}',
  ],
  // Why a note was left unsure (src/engine/match/align/verdicts.ts, src/engine/recheck/).
  [
    '{} may be covered by the same note an octave below it, which was struck with it',
    '{} kann von demselben Ton eine Oktave tiefer verdeckt sein, der zugleich angeschlagen wurde',
  ],
  [
    'something sounded where {} belongs, too faint to say which key',
    'wo {} hingehört, klang etwas, aber zu schwach, um die Taste zu nennen',
  ],
  [
    '{} was heard too faintly to say that it was struck',
    '{} war zu schwach zu hören, um zu sagen, ob es angeschlagen wurde',
  ],
  ['{} may be held over from the chord before', '{} kann vom vorigen Akkord liegen geblieben sein'],
  // The microphone (src/io/microphone/, src/ui/attempt/current-attempt.svelte.ts).
  [
    'The microphone is not allowed. Allow it for this page in the browser (the sign beside the address) and in the ' +
      'device’s own settings, then try again. You can also open a recording instead.',
    'Das Mikrofon ist nicht erlaubt. Erlaub es dieser Seite im Browser (das Zeichen neben der Adresse) und in den ' +
      'Einstellungen des Geräts, dann versuch es noch einmal. Du kannst auch eine Aufnahme öffnen.',
  ],
  [
    'No microphone was found. Connect one, or open a recording instead.',
    'Es wurde kein Mikrofon gefunden. Schließ eines an, oder öffne eine Aufnahme.',
  ],
  [
    'The microphone is taken by another program or page. Close that one, then try again.',
    'Das Mikrofon wird von einem anderen Programm oder einer anderen Seite benutzt. Schließ sie, dann versuch es noch einmal.',
  ],
  [
    'This browser cannot record here. Open the page over https in a current browser, or open a recording instead.',
    'Dieser Browser kann hier nicht aufnehmen. Öffne die Seite über https in einem aktuellen Browser, oder öffne eine Aufnahme.',
  ],
  ['The microphone could not be opened', 'Das Mikrofon ließ sich nicht öffnen'],
  ['The microphone went away', 'Das Mikrofon ist verschwunden'],
  ['Connect it again, then record.', 'Schließ es wieder an, dann nimm auf.'],
  ['This file could not be opened', 'Diese Datei ließ sich nicht öffnen'],
  ['This attempt could not be analysed', 'Dieser Versuch ließ sich nicht auswerten'],
  [
    'The listening part of the page could not be loaded, or ran out of memory.',
    'Der Teil der Seite, der zuhört, ließ sich nicht laden, oder der Speicher reichte ihm nicht.',
  ],
  [
    'It could not be listened to, through a fault of this page.',
    'Sie ließ sich nicht anhören, durch einen Fehler dieser Seite.',
  ],
  ['The sorting was called off.', 'Das Sortieren wurde abgebrochen.'],
  ['It could not be read. Is it still where it was?', 'Sie ließ sich nicht lesen. Ist sie noch, wo sie war?'],
  [
    'The listening part of the page could not be loaded.',
    'Der Teil der Seite, der zuhört, ließ sich nicht laden.',
  ],
  [
    'The device recorded with echo cancellation on, which changes loudness and may hide soft notes.',
    'Das Gerät hat mit Echounterdrückung aufgenommen; sie verändert die Lautstärke und kann leise Töne verdecken.',
  ],
  [
    'The device recorded with noise suppression on, which changes loudness and may hide soft notes.',
    'Das Gerät hat mit Rauschunterdrückung aufgenommen; sie verändert die Lautstärke und kann leise Töne verdecken.',
  ],
  [
    'The device recorded with automatic gain on, which changes loudness and may hide soft notes.',
    'Das Gerät hat mit selbsttätiger Aussteuerung aufgenommen; sie verändert die Lautstärke und kann leise Töne verdecken.',
  ],
  // Listening at the piano (src/io/microphone/troubles.ts, src/ui/sitting/state/sitting.svelte.ts).
  [
    'The microphone is gone: unplugged, or taken by the system. What was heard until then is kept. Connect it again, then start listening again.',
    'Das Mikrofon ist weg: ausgesteckt oder vom System genommen. Was bis dahin zu hören war, ist aufgehoben. Schließ es wieder an, dann fang wieder an zuzuhören.',
  ],
  [
    'Another app has taken the microphone. Listening goes on when that app gives it back.',
    'Eine andere App hat das Mikrofon genommen. Das Zuhören geht weiter, wenn sie es zurückgibt.',
  ],
  [
    'Listening has stopped because the screen was locked or a call came in. Touch the page to go on.',
    'Das Zuhören hat aufgehört, weil der Bildschirm gesperrt wurde oder ein Anruf kam. Berühr die Seite, dann geht es weiter.',
  ],
  ['The microphone is back; listening goes on.', 'Das Mikrofon ist wieder da; das Zuhören geht weiter.'],
  [
    'About {} s of sound were lost because the device was busy. Close other apps, and play this attempt again.',
    'Etwa {} s Klang sind verloren, weil das Gerät beschäftigt war. Schließ andere Apps, und spiel diesen Versuch noch einmal.',
  ],
  [
    'The page was closed during this attempt; what had sounded until then was kept.',
    'Die Seite wurde während dieses Versuchs geschlossen; was bis dahin geklungen hatte, ist aufgehoben.',
  ],
  ['This attempt could not be worked out.', 'Dieser Versuch ließ sich nicht auswerten.'],
  ['The analysis was called off.', 'Das Auswerten wurde abgebrochen.'],
  ['The page was closed.', 'Die Seite wurde geschlossen.'],
  // The journal (src/io/history/).
  [
    'There is no room left on this device for the journal. Export it, then let go of the sound of older attempts.',
    'Auf diesem Gerät ist kein Platz mehr für das Tagebuch. Sichere es in eine Datei, dann lösch den Klang älterer Versuche.',
  ],
  [
    'A newer version of this page has the journal open. Close all its windows and open it again.',
    'Eine neuere Version dieser Seite hat das Tagebuch geöffnet. Schließ alle ihre Fenster, und öffne sie wieder.',
  ],
  [
    'This browser keeps no journal here, as in a private window. Attempts are told, but not stored; save their sound.',
    'Dieser Browser führt hier kein Tagebuch, wie in einem privaten Fenster. Versuche werden berichtet, aber nicht aufgehoben; sichere ihren Klang.',
  ],
  ['The journal could not be used: {}', 'Das Tagebuch ließ sich nicht benutzen: {}'],
  [
    'This file is no journal of Evenfall, or it is damaged from its beginning.',
    'Diese Datei ist kein Tagebuch von Evenfall, oder sie ist von Anfang an beschädigt.',
  ],
  ['This file is no journal of Evenfall.', 'Diese Datei ist kein Tagebuch von Evenfall.'],
  [
    'This file holds more than any journal can.',
    'Diese Datei enthält mehr, als ein Tagebuch enthalten kann.',
  ],
  [
    'The file breaks off or is damaged; what came before is in the journal.',
    'Die Datei bricht ab oder ist beschädigt; was davor kam, steht im Tagebuch.',
  ],
  [
    'It is no sound that can be read; the report is kept without it.',
    'Das ist kein Klang, der sich lesen lässt; der Bericht bleibt ohne ihn.',
  ],
  ['It is too large.', 'Das ist zu groß.'],
  ['It belongs to no journal.', 'Das gehört zu keinem Tagebuch.'],
  ['Its time lies in a far future.', 'Seine Zeit liegt in ferner Zukunft.'],
  ['There is no such exercise.', 'Diese Übung gibt es nicht.'],
  [
    'It speaks of steps that its exercise does not have.',
    'Darin ist von Schritten die Rede, die es in der Übung nicht gibt.',
  ],
  ['… and {} more.', '… und {} mehr.'],
  // The room check (src/engine/live/room-check.ts).
  [
    'No note was heard; put the device nearer to the piano and play them again, a little louder.',
    'Kein Ton war zu hören; stell das Gerät näher ans Klavier und spiel sie noch einmal, etwas lauter.',
  ],
  [
    'Only {} of three notes was heard; put the device nearer to the piano and play them again, a little louder.',
    'Nur {} von drei Tönen war zu hören; stell das Gerät näher ans Klavier und spiel sie noch einmal, etwas lauter.',
  ],
  [
    'Only {} of three notes were heard; put the device nearer to the piano and play them again, a little louder.',
    'Nur {} von drei Tönen waren zu hören; stell das Gerät näher ans Klavier und spiel sie noch einmal, etwas lauter.',
  ],
  [
    'The piano is too loud for the microphone; put the device further away.',
    'Das Klavier ist zu laut für das Mikrofon; stell das Gerät weiter weg.',
  ],
  [
    'The piano stands only {} dB above the room; put the device nearer to it.',
    'Das Klavier liegt nur {} dB über den Geräuschen des Raums; stell das Gerät näher heran.',
  ],
  [
    'The room is loud: the piano stands only {} dB above it; close windows and doors, or turn off what hums.',
    'Der Raum ist laut: Das Klavier liegt nur {} dB darüber; schließ Fenster und Türen, oder schalte aus, was brummt.',
  ],
  [
    'The piano arrives very softly; put the device nearer to it.',
    'Das Klavier kommt sehr leise an; stell das Gerät näher heran.',
  ],
  [
    'Mains hum at {} Hz is near; move the device away from chargers and cables.',
    'Netzbrummen bei {} Hz ist nah; stell das Gerät weg von Ladegeräten und Kabeln.',
  ],
];
