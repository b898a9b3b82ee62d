/** What is said of reviews that came and of attempts that are sent (src/io/shelf/, src/ui/send/, src/ui/practice/), as in `sentences.ts`. */
export const SHELF_SENTENCES: readonly (readonly [english: string, german: string])[] = [
  [
    'There is no room left on this device for the review. Delete older reviews or the sound of older attempts, then open it again.',
    'Auf diesem Gerät ist kein Platz mehr für die Rückmeldung. Lösch ältere Rückmeldungen oder den Klang älterer Versuche, dann öffne sie noch einmal.',
  ],
  [
    'A newer version of this page has the reviews open. Close all its windows and open it again.',
    'Eine neuere Version dieser Seite hat die Rückmeldungen offen. Schließ alle ihre Fenster und öffne sie noch einmal.',
  ],
  [
    'This browser keeps no reviews here, as in a private window. The review is shown, but not stored; keep its file.',
    'Dieser Browser bewahrt hier keine Rückmeldungen auf, etwa in einem privaten Fenster. Die Rückmeldung wird gezeigt, aber nicht gesichert; behalte ihre Datei.',
  ],
  ['The reviews could not be used: {}', 'Die Rückmeldungen ließen sich nicht benutzen: {}'],
  ['The reviews could not be kept or read', 'Die Rückmeldungen ließen sich nicht sichern oder lesen'],
  [
    'It holds attempts that somebody sends to a teacher. A teacher opens it on the page “For teachers”.',
    'Sie enthält Versuche, die jemand an eine Lehrkraft schickt. Eine Lehrkraft öffnet sie auf der Seite „Für Lehrkräfte“.',
  ],
  ['The file could not be made.', 'Die Datei ließ sich nicht machen.'],
  [
    'The system could not pass it on. Save the file, then send it yourself.',
    'Das System konnte sie nicht weitergeben. Sichere die Datei und schick sie selbst.',
  ],
];
