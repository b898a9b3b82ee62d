/** The rows of `rows.ts`, in their order, as they are told in German with German note names; each was read by eye. */
export const GERMAN_ROWS: readonly {
  readonly english: string;
  readonly verdict: string;
  readonly nextStep: string;
}[] = [
  {
    english: 'Too little was heard to judge: 2 of 13 notes.',
    verdict: 'Zu wenig war zu hören, um es zu beurteilen: 2 von 13 Tönen.',
    nextStep: 'Spiel noch einmal, mit dem Gerät ein bis zwei Meter vom Klavier entfernt.',
  },
  {
    english: 'This sounded like E major, not A major.',
    verdict: 'Das klang wie E-Dur, nicht wie A-Dur.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'This sounded like A minor, not A major: C natural for C♯ each time.',
    verdict: 'Das klang wie a-Moll, nicht wie A-Dur: C statt Cis jedes Mal.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'This sounded like both hands, not the right hand alone.',
    verdict: 'Das klang wie beide Hände, nicht wie die rechte Hand allein.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'You stopped after C♯ going up, for 3.4 s.',
    verdict: 'Nach Cis aufwärts hast du 3,4 s lang angehalten.',
    nextStep: 'rechte Hand, Cis–E–A–Cis–E–A, langsam, bei 48, ohne Halt durch diese Stelle.',
  },
  {
    english: 'It breaks off after E coming down.',
    verdict: 'Nach E abwärts bricht es ab.',
    nextStep: 'rechte Hand, A–Cis–E–A–E–Cis–A, langsam, bei 48, ohne Halt durch diese Stelle.',
  },
  {
    english: 'Again at the same place: F♯ for E going up.',
    verdict: 'Wieder an derselben Stelle: Fis statt E aufwärts.',
    nextStep: 'nur A–Cis–E–A, im halben Tempo, 40, bis es fünfmal hintereinander richtig ist.',
  },
  {
    english: 'C natural for C♯: the leading note is raised in the V7.',
    verdict: 'C statt Cis: Der Leitton ist im V7 erhöht.',
    nextStep: 'Spiel nur i–V7–i, und sag beim Anschlag „Cis“.',
  },
  {
    english: 'G natural for G♯: the leading note is raised.',
    verdict: 'G statt Gis: Der Leitton ist erhöht.',
    nextStep: 'nur E–F–Gis–A, und sag beim Anschlag „Gis“.',
  },
  {
    english: 'E natural for E♭ both times: the key has two flats.',
    verdict: 'E statt Es beide Male: Die Tonart hat zwei Be.',
    nextStep: 'Sag die Vorzeichen (B und Es), spiel die Tonleiter einmal langsam, dann dies noch einmal.',
  },
  {
    english: 'One note wrong: C natural for C♯ going up.',
    verdict: 'Ein Ton falsch: C statt Cis aufwärts.',
    nextStep: 'rechte Hand, nur A–Cis–E, bei 48, bis es richtig ist; dann das Ganze.',
  },
  {
    english: 'Two notes wrong, the hand landed one key off: B for C and D for E♭ going up.',
    verdict: 'Zwei Töne falsch, die Hand ist eine Taste daneben gelandet: H statt C und D statt Es aufwärts.',
    nextStep: 'Schlag C–Es–As als Akkord an, heb ab, schlag noch einmal an; dann Ton für Ton, bei 40.',
  },
  {
    english: 'A (finger 3) does not sound in the second inversion going up.',
    verdict: 'A (Finger 3) klingt in der zweiten Umkehrung aufwärts nicht.',
    nextStep: 'Drück den Griff erst stumm, alle Tasten berührt; dann schlag sie zusammen an.',
  },
  {
    english: 'One note wrong: F♯ for E going up.',
    verdict: 'Ein Ton falsch: Fis statt E aufwärts.',
    nextStep: 'rechte Hand, nur A–Cis–E–A, bei 48, bis es richtig ist; dann das Ganze.',
  },
  {
    english: 'Two notes not right: E missing going up and G for A coming down.',
    verdict: 'Zwei Töne nicht richtig: E fehlt aufwärts und G statt A abwärts.',
    nextStep: 'rechte Hand, nur A–Cis–E–A, bei 48, bis E jedes Mal klingt; dann das Ganze.',
  },
  {
    english: 'One note wrong: F♯ for E going up (left hand).',
    verdict: 'Ein Ton falsch: Fis statt E aufwärts (linke Hand).',
    nextStep: 'beide Hände, nur A–Cis–E–A, bei 48, bis es richtig ist; dann das Ganze.',
  },
  {
    english: 'Two notes missing: E going up and A coming down.',
    verdict: 'Zwei Töne fehlen: E aufwärts und A abwärts.',
    nextStep: 'rechte Hand, nur A–Cis–E–A, bei 48, bis E jedes Mal klingt; dann das Ganze.',
  },
  {
    english: 'F caught with E going up.',
    verdict: 'F aufwärts mit E mitgenommen.',
    nextStep: 'rechte Hand, nur A–Cis–E–A–Cis, bei 48, jeder Finger mitten auf seiner Taste.',
  },
  {
    english: 'E is struck twice going up.',
    verdict: 'E ist aufwärts zweimal angeschlagen.',
    nextStep: 'nur A–Cis–E–A–Cis, bei 48; was auch geschieht, geh weiter zum nächsten Ton.',
  },
  {
    english: 'Every note right. The thumb comes late going up to A, by 90 ms; the rest is even.',
    verdict: 'Jeder Ton richtig. Der Daumen kommt aufwärts bei A 90 ms zu spät; der Rest ist gleichmäßig.',
    nextStep: 'rechte Hand, nur Cis–E–A–Cis, bei 53. Führ den Daumen unter, während 3 noch E hält.',
  },
  {
    english: 'Every note right. The thumb comes late going up to C, both times; the rest is even.',
    verdict:
      'Jeder Ton richtig. Der Daumen kommt aufwärts bei C beide Male zu spät; der Rest ist gleichmäßig.',
    nextStep: 'rechte Hand, nur As–C–Es–As–C, bei 53. Führ den Daumen unter, während 4 noch As hält.',
  },
  {
    english: 'Every note right. Finger 4 crosses over late coming down to A♭, both times; the rest is even.',
    verdict:
      'Jeder Ton richtig. Finger 4 setzt abwärts bei As beide Male zu spät über; der Rest ist gleichmäßig.',
    nextStep: 'rechte Hand, nur C–As–Es–C–As, bei 53. Setz 4 über, während der Daumen noch C hält.',
  },
  {
    english:
      'Every note right. The crossings come late both going up and coming down, by 90 ms; the rest is even.',
    verdict:
      'Jeder Ton richtig. Die Übergänge kommen aufwärts und abwärts zu spät, um 90 ms; der Rest ist gleichmäßig.',
    nextStep: 'rechte Hand, eine Richtung nach der anderen, bei 53; dann hinauf und hinunter.',
  },
  {
    english:
      'Every note right. Hands apart for now: together the time varies by 19 %, each hand alone by 0 % at most.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Zusammen schwankt die Zeit um 19 %, jede Hand allein höchstens um 0 %.',
    nextStep: 'Jede Hand allein, bis es gleichmäßig ist; dann zusammen bei 49.',
  },
  {
    english: 'Every note right. Hands apart for now: the crossings come late both ways; the rest is even.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Die Übergänge kommen in beiden Richtungen zu spät; der Rest ist gleichmäßig.',
    nextStep: 'Jede Hand allein, bis es gleichmäßig ist; dann zusammen bei 53.',
  },
  {
    english:
      'Every note right. Hands apart for now: together the crossings come 105 ms late, in each hand alone 10 ms at most; the rest is even.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Zusammen kommen die Übergänge 105 ms zu spät, in jeder Hand allein höchstens 10 ms; der Rest ist gleichmäßig.',
    nextStep: 'Jede Hand allein, bis es gleichmäßig ist; dann zusammen bei 53.',
  },
  {
    english: 'Every note right. The change to the V7 takes 1.9 times as long as the others.',
    verdict: 'Jeder Ton richtig. Der Wechsel zum Akkord V7 dauert 1,9-mal so lang wie die anderen.',
    nextStep:
      'Halt den Akkord, schau auf den nächsten Griff, dann geh in einer Bewegung, ohne Ton dazwischen.',
  },
  {
    english: 'Every note right. The way down begins 150 ms late: the top note is held.',
    verdict: 'Jeder Ton richtig. Der Weg abwärts beginnt 150 ms zu spät: Der oberste Ton wird gehalten.',
    nextStep: 'Denk an den Weg abwärts, bevor du oben bist, und halt den obersten Ton nicht.',
  },
  {
    english: 'Every note right. The notes limp in pairs, long–short.',
    verdict: 'Jeder Ton richtig. Die Töne hinken paarweise, lang–kurz.',
    nextStep: 'erst umgekehrt, kurz–lang, dreimal; dann gleichmäßig.',
  },
  {
    english: 'Every note right. The whole is uneven: the time from note to note varies by 21 %.',
    verdict: 'Jeder Ton richtig. Das Ganze ist ungleichmäßig: Die Zeit von Ton zu Ton schwankt um 21 %.',
    nextStep: 'rechte Hand, langsamer, bei 55, mit dem Puls.',
  },
  {
    english: 'Every note right. The hands are not together: the left hand comes first, by 45 ms.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen: Die linke Hand kommt 45 ms früher.',
    nextStep: 'Spiel noch einmal, und hör auf die rechte Hand.',
  },
  {
    english: 'Every note right. The hands are not together: the left hand comes first, by 75 ms.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen: Die linke Hand kommt 75 ms früher.',
    nextStep: 'Spiel noch einmal, und hör auf die rechte Hand.',
  },
  {
    english: 'Every note right. The hands are not together, now one first, now the other.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen, mal ist die eine zuerst, mal die andere.',
    nextStep: 'langsamer, bei 53: Bleib auf jedem Schlag stehen, beide Hände zugleich, dann geh weiter.',
  },
  {
    english:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, finger 5 of the left hand last.',
    verdict:
      'Jeder Ton richtig. Die Akkorde sind nicht zugleich angeschlagen: 70 ms vom ersten bis zum letzten Ton, Finger 5 der linken Hand zuletzt.',
    nextStep:
      'Berühr alle Tasten, bevor du drückst, und leg das Gewicht des Arms in Finger 5 der linken Hand.',
  },
  {
    english:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, finger 5 last.',
    verdict:
      'Jeder Ton richtig. Die Akkorde sind nicht zugleich angeschlagen: 70 ms vom ersten bis zum letzten Ton, Finger 5 zuletzt.',
    nextStep: 'Berühr alle Tasten, bevor du drückst, und leg das Gewicht des Arms in Finger 5.',
  },
  {
    english: 'Every note right. It drags, from 78 to 62.',
    verdict: 'Jeder Ton richtig. Es schleppt, von 78 auf 62.',
    nextStep: 'mit dem Puls, 10 % langsamer, bei 62.',
  },
  {
    english: 'Every note right. It rushes, from 81 to 99.',
    verdict: 'Jeder Ton richtig. Es eilt, von 81 auf 99.',
    nextStep: 'mit dem Puls, 10 % langsamer, bei 80.',
  },
  {
    english: 'Every note right. Even, at 80; the aim is 100.',
    verdict: 'Jeder Ton richtig. Gleichmäßig, bei 80; das Ziel ist 100.',
    nextStep: 'dasselbe bei 85.',
  },
  {
    english: 'Every note right. The crossing is in time now, where it was 90 ms late.',
    verdict: 'Jeder Ton richtig. Der Übergang kommt jetzt rechtzeitig, vorher kam er 90 ms zu spät.',
    nextStep: 'dasselbe noch einmal, damit es bleibt.',
  },
  {
    english: 'Every note right now, where one was not last time.',
    verdict: 'Jeder Ton jetzt richtig, beim letzten Mal war es einer nicht.',
    nextStep: 'dasselbe noch einmal, damit es bleibt.',
  },
  {
    english: 'Every note right, and even.',
    verdict: 'Jeder Ton richtig und alles gleichmäßig.',
    nextStep: 'dasselbe noch einmal; dreimal hintereinander, dann ist es so weit.',
  },
  {
    english: 'Every note right, and even, twice in a row. Once more like that.',
    verdict: 'Jeder Ton richtig und alles gleichmäßig, zweimal hintereinander. Noch einmal so.',
    nextStep: 'dasselbe noch einmal.',
  },
  {
    english: 'Three in a row, every note right and even: the right hand is ready.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und alles gleichmäßig: Die rechte Hand ist so weit.',
    nextStep: 'die linke Hand allein, auf dieselbe Art; dann beide Hände zusammen.',
  },
  {
    english: 'Three in a row, every note right and even: the right hand is ready.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und alles gleichmäßig: Die rechte Hand ist so weit.',
    nextStep: 'beide Hände zusammen, bei 53; die linke Hand ist auch so weit.',
  },
  {
    english: 'A major stands at 80: three in a row, every note right and even.',
    verdict: 'Die Tonart A-Dur sitzt bei 80: dreimal hintereinander jeder Ton richtig und alles gleichmäßig.',
    nextStep: '6 bis 8 Schläge schneller, oder die nächste Tonart im Quintenzirkel, E-Dur.',
  },
];
