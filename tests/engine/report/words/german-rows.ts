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
    english: '0.4 s of sound were lost: time and missing notes are not judged.',
    verdict: '0,4 s der Aufnahme fehlen: Über Zeit und fehlende Töne ist nichts zu sagen.',
    nextStep: 'dasselbe noch einmal von Anfang an.',
  },
  {
    english: '1.3 s of sound were lost: time and missing notes are not judged; F♯ instead of E going up.',
    verdict:
      '1,3 s der Aufnahme fehlen: Über Zeit und fehlende Töne ist nichts zu sagen; Fis statt E aufwärts.',
    nextStep: 'dasselbe noch einmal von Anfang an.',
  },
  {
    english: 'This sounded like E major, not A major.',
    verdict: 'Das klang wie E-Dur, nicht wie A-Dur.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'This sounded like A minor, not A major: C natural instead of C♯ each time.',
    verdict: 'Das klang wie a-Moll, nicht wie A-Dur: C statt Cis jedes Mal.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'This sounded like both hands, not the right hand alone.',
    verdict: 'Das klang wie beide Hände, nicht wie die rechte Hand allein.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: 'Every note right. You stopped after C♯ going up, for 3.4 s.',
    verdict: 'Jeder Ton richtig. Nach Cis aufwärts hast du 3,4 s lang angehalten.',
    nextStep:
      'nur Cis–E–A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, dreimal hintereinander ohne Halt durch diese Stelle; dann das Ganze.',
  },
  {
    english: 'Every note so far right. It breaks off after E coming down.',
    verdict: 'So weit jeder Ton richtig. Nach E abwärts bricht es ab.',
    nextStep:
      'nur A–Cis–E–A–E–Cis–A, ♩ = 48, zwei Töne auf jeden Schlag, dreimal hintereinander ohne Halt durch diese Stelle; dann das Ganze.',
  },
  {
    english: '12 of 13 notes right. Again at the same place: F♯ instead of E going up.',
    verdict: '12 von 13 Tönen richtig. Wieder an derselben Stelle: Fis statt E aufwärts.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 40, zwei Töne auf jeden Schlag, bis es fünfmal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '14 of 15 notes right. C natural instead of C♯: the leading note is raised in the V7.',
    verdict: '14 von 15 Tönen richtig. C statt Cis: Der Leitton ist im V7 erhöht.',
    nextStep:
      'nur i–V7–i, ♩ = 40, ein Akkord auf jeden Schlag, und sag dabei „Cis“, bis es dreimal hintereinander stimmt.',
  },
  {
    english: 'This sounded like the natural minor scale, not the harmonic one.',
    verdict: 'Das klang wie die natürliche Molltonleiter, nicht wie die harmonische.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: '13 of 15 notes right. E natural instead of E♭ both times: the key has two flats.',
    verdict: '13 von 15 Tönen richtig. E statt Es beide Male: Die Tonart hat zwei Be.',
    nextStep:
      'Sag die Vorzeichen (B und Es); dann nur C–D–Es–F–G, ♩ = 48, zwei Töne auf jeden Schlag, bis Es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '13 of 15 notes right. B♭ instead of B both times: the key has no sharps or flats.',
    verdict: '13 von 15 Tönen richtig. B statt H beide Male: Die Tonart hat keine Vorzeichen.',
    nextStep:
      'Sag die Vorzeichen (keine); dann nur G–A–H–C–H, ♩ = 48, zwei Töne auf jeden Schlag, bis H dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '12 of 13 notes right. One wrong: C natural instead of C♯ going up.',
    verdict: '12 von 13 Tönen richtig. Einer falsch: C statt Cis aufwärts.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english:
      '11 of 13 notes right. Two wrong, the hand landed one key off: B instead of C and D instead of E♭ going up.',
    verdict:
      '11 von 13 Tönen richtig. Zwei falsch, die Hand ist eine Taste daneben gelandet: H statt C und D statt Es aufwärts.',
    nextStep:
      'Schlag C–Es–As als Akkord an, heb ab, schlag noch einmal an, dreimal; dann Ton für Ton, ♩ = 40, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt.',
  },
  {
    english: '20 of 21 notes right. The inner note A does not sound in the second inversion going up.',
    verdict: '20 von 21 Tönen richtig. Die Mittelstimme A klingt in der zweiten Umkehrung aufwärts nicht.',
    nextStep:
      'nur von der ersten Umkehrung hinauf zur oberen Grundstellung, ♩ = 48, ein Akkord auf jeden Schlag, jeder erst stumm gedrückt, bis dreimal hintereinander jeder Ton klingt.',
  },
  {
    english: '12 of 13 notes right. One wrong: F♯ instead of E going up.',
    verdict: '12 von 13 Tönen richtig. Einer falsch: Fis statt E aufwärts.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '11 of 13 notes right. Two not right: E missing going up and G instead of A coming down.',
    verdict: '11 von 13 Tönen richtig. Zwei nicht richtig: E fehlt aufwärts und G statt A abwärts.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis E dreimal hintereinander klingt; dann das Ganze.',
  },
  {
    english: '25 of 26 notes right. One wrong: F♯ instead of E going up (left hand).',
    verdict: '25 von 26 Tönen richtig. Einer falsch: Fis statt E aufwärts (linke Hand).',
    nextStep:
      'linke Hand allein, nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '11 of 13 notes right. Two missing: E going up and A coming down.',
    verdict: '11 von 13 Tönen richtig. Zwei fehlen: E aufwärts und A abwärts.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis E dreimal hintereinander klingt; dann das Ganze.',
  },
  {
    english: 'All 13 notes right. F caught with E going up.',
    verdict: 'Alle 13 Töne richtig. F aufwärts mit E mitgegriffen.',
    nextStep:
      'nur A–Cis–E–A–Cis, ♩ = 48, zwei Töne auf jeden Schlag, jeder Finger mitten auf seiner Taste, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: 'All 13 notes right. E is struck twice going up.',
    verdict: 'Alle 13 Töne richtig. E ist aufwärts zweimal angeschlagen.',
    nextStep:
      'nur A–Cis–E–A–Cis, ♩ = 48, zwei Töne auf jeden Schlag; was auch geschieht, geh weiter zum nächsten Ton, dreimal hintereinander.',
  },
  {
    english: 'Every note right. The crossing comes late going up to A, by 90 ms; the rest is even.',
    verdict: 'Jeder Ton richtig. Der Untersatz aufwärts zu A kommt 90 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur Cis–E–A–Cis, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.',
  },
  {
    english:
      'Every note right. The crossing comes late going up to C, both times, by 90 ms; the rest is even.',
    verdict:
      'Jeder Ton richtig. Der Untersatz aufwärts zu C kommt beide Male 90 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur As–C–Es–As, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.',
  },
  {
    english: 'Every note right. The crossing comes late going up, each time, by 90 ms; the rest is even.',
    verdict:
      'Jeder Ton richtig. Der Untersatz aufwärts kommt jedes Mal 90 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur H–Cis–D–E, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.',
  },
  {
    english:
      'Every note right. The crossing comes late coming down to A♭, both times, by 90 ms; the rest is even.',
    verdict:
      'Jeder Ton richtig. Der Übersatz abwärts zu As kommt beide Male 90 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur Es–C–As–Es, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.',
  },
  {
    english: 'Every note right. The crossings come late both going up and coming down, by 90 ms.',
    verdict: 'Jeder Ton richtig. Unter- und Übersätze kommen aufwärts und abwärts 90 ms zu spät.',
    nextStep:
      'nur As–C–Es–As–C–Es–As, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; abwärts genauso; dann beides.',
  },
  {
    english:
      'Every note right. Hands apart for now: together the time varies by 19 %, each hand alone by 0 % at most.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Zusammen schwankt die Zeit um 19 %, jede Hand allein höchstens um 0 %.',
    nextStep:
      'jede Hand allein, A–Cis–E–A–Cis–E–A, ♩ = 49, zwei Töne auf jeden Schlag, bis jede dreimal hintereinander gleichmäßig ist; dann beide Hände.',
  },
  {
    english: 'Every note right. Hands apart for now: the crossings come late both ways.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Unter- und Übersätze kommen in beiden Richtungen zu spät.',
    nextStep:
      'jede Hand allein, A–Cis–E–A–Cis–E–A, ♩ = 53, zwei Töne auf jeden Schlag, bis jede dreimal hintereinander gleichmäßig ist; dann beide Hände.',
  },
  {
    english:
      'Every note right. Hands apart for now: together the crossings come 105 ms late, in each hand alone 10 ms at most.',
    verdict:
      'Jeder Ton richtig. Vorerst getrennte Hände: Zusammen kommen Unter- und Übersätze 105 ms zu spät, in jeder Hand allein höchstens 10 ms.',
    nextStep:
      'jede Hand allein, A–Cis–E–A–Cis–E–A, ♩ = 53, zwei Töne auf jeden Schlag, bis jede dreimal hintereinander gleichmäßig ist; dann beide Hände.',
  },
  {
    english: 'Every note right. The change to the V7 takes 1.9 times as long as the others.',
    verdict: 'Jeder Ton richtig. Der Wechsel zum V7 dauert 1,9-mal so lang wie die anderen.',
    nextStep:
      'nur I–V7, ♩ = 60, ein Akkord auf jeden Schlag: Halt den Akkord, schau auf den nächsten Griff, dann geh in einer Bewegung hin, bis er dreimal hintereinander rechtzeitig kommt.',
  },
  {
    english: 'Every note right. The way down begins 150 ms late: the top note is held.',
    verdict: 'Jeder Ton richtig. Der Weg abwärts beginnt 150 ms zu spät: Der oberste Ton wird gehalten.',
    nextStep:
      'nur A–Cis–E–A–E–Cis–A, ♩ = 64, zwei Töne auf jeden Schlag: Denk vor dem obersten Ton schon an den Weg abwärts, bis es dreimal hintereinander rechtzeitig weitergeht.',
  },
  {
    english: 'Every note right. The notes limp in pairs, long–short.',
    verdict: 'Jeder Ton richtig. Die Töne hinken paarweise, lang–kurz.',
    nextStep:
      'nur von A aufwärts bis A (8 Töne), ♩ = 64, zwei Töne auf jeden Schlag, umgekehrt, kurz–lang, dann gleichmäßig, jedes, bis es dreimal hintereinander stimmt.',
  },
  {
    english:
      'Every note right. The time from note to note varies by 21 %; up to 4.7 % is even at this tempo.',
    verdict:
      'Jeder Ton richtig. Die Zeit von Ton zu Ton schwankt um 21 %; bis 4,7 % ist in diesem Tempo gleichmäßig.',
    nextStep:
      'das Ganze, ♩ = 55, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right. The hands are not together: the left hand comes first, by 45 ms.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen: Die linke Hand kommt 45 ms früher.',
    nextStep:
      'nur von der Grundstellung hinauf zur oberen Grundstellung, ♩ = 53, ein Akkord auf jeden Schlag, und hör auf die rechte Hand, bis beide dreimal hintereinander zusammen sind.',
  },
  {
    english: 'Every note right. The hands are not together: the left hand comes first, by 75 ms.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen: Die linke Hand kommt 75 ms früher.',
    nextStep:
      'nur von der Grundstellung hinauf zur oberen Grundstellung, ♩ = 53, ein Akkord auf jeden Schlag, und hör auf die rechte Hand, bis beide dreimal hintereinander zusammen sind.',
  },
  {
    english: 'Every note right. The hands are not together, now one first, now the other.',
    verdict: 'Jeder Ton richtig. Die Hände sind nicht zusammen, mal ist die eine zuerst, mal die andere.',
    nextStep:
      'nur von der Grundstellung hinauf zur oberen Grundstellung, ♩ = 53, ein Akkord auf jeden Schlag: Bleib auf jedem Schlag stehen, beide Hände zugleich, bis es dreimal hintereinander stimmt.',
  },
  {
    english: 'Every note right. The inner notes are much softer than the outer ones, by 14 dB.',
    verdict: 'Jeder Ton richtig. Die Mittelstimmen sind viel leiser als die Außenstimmen, um 14 dB.',
    nextStep:
      'nur von der Grundstellung hinauf zur zweiten Umkehrung, ♩ = 60, ein Akkord auf jeden Schlag, jeder erst stumm gedrückt, bis dreimal hintereinander jeder Ton klingt.',
  },
  {
    english:
      'Every note right. Tired? Each of the last four attempts was less even than the one before, from 2 to 21 %.',
    verdict:
      'Jeder Ton richtig. Müde? Von den letzten vier Versuchen war jeder ungleichmäßiger als der davor, von 2 bis 21 %.',
    nextStep:
      'Mach eine Pause, und spiel später oder morgen weiter. Bei Schmerzen oder Taubheit hör auf, und frag deine Lehrkraft und eine Ärztin oder einen Arzt.',
  },
  {
    english:
      'Every note right. The chords of the left hand are not struck as one: 70 ms from first note to last, the lowest note last.',
    verdict:
      'Jeder Ton richtig. Die Akkorde der linken Hand sind nicht zugleich angeschlagen: 70 ms vom ersten bis zum letzten Ton, der tiefste Ton zuletzt.',
    nextStep:
      'linke Hand allein, nur von der oberen Grundstellung hinunter zur ersten Umkehrung, ♩ = 60, ein Akkord auf jeden Schlag: Erst alle Tasten berühren, das Gewicht auf dem tiefsten Ton, bis drei hintereinander wie einer klingen.',
  },
  {
    english:
      'Every note right. The chords are not struck as one: 70 ms from first note to last, the highest note last.',
    verdict:
      'Jeder Ton richtig. Die Akkorde sind nicht zugleich angeschlagen: 70 ms vom ersten bis zum letzten Ton, der höchste Ton zuletzt.',
    nextStep:
      'nur von der oberen Grundstellung hinunter zur ersten Umkehrung, ♩ = 60, ein Akkord auf jeden Schlag: Erst alle Tasten berühren, das Gewicht auf dem höchsten Ton, bis drei hintereinander wie einer klingen.',
  },
  {
    english: 'Every note right. You get slower, from ♩ = 78 to 62.',
    verdict: 'Jeder Ton richtig. Du wirst langsamer, von ♩ = 78 auf 62.',
    nextStep:
      'das Ganze, ♩ = 62, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right. You get faster, from ♩ = 81 to 99.',
    verdict: 'Jeder Ton richtig. Du wirst schneller, von ♩ = 81 auf 99.',
    nextStep:
      'das Ganze, ♩ = 80, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right. Even, at ♩ = 80; the aim is 100.',
    verdict: 'Jeder Ton richtig. Gleichmäßig, bei ♩ = 80; das Ziel ist 100.',
    nextStep: 'dasselbe, ♩ = 85, zwei Töne auf jeden Schlag, bis es dreimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right. The crossing is in time now; it was 90 ms late.',
    verdict: 'Jeder Ton richtig. Unter- und Übersatz kommen jetzt rechtzeitig, vorher 90 ms zu spät.',
    nextStep: 'dasselbe noch einmal, damit es bleibt.',
  },
  {
    english: 'Every note right now; last time one was not.',
    verdict: 'Jeder Ton jetzt richtig, beim letzten Mal war es einer nicht.',
    nextStep: 'dasselbe noch einmal, damit es bleibt.',
  },
  {
    english: '14 of 15 notes right. One wrong: G natural instead of G♯ coming down.',
    verdict: '14 von 15 Tönen richtig. Einer falsch: G statt Gis abwärts.',
    nextStep:
      'nur Gis–A–Gis–F, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: 'This sounded like the melodic minor scale, not the harmonic one.',
    verdict: 'Das klang wie die melodische Molltonleiter, nicht wie die harmonische.',
    nextStep: 'Wechsle dazu, wenn du das wolltest, oder spiel die gewählte Übung noch einmal.',
  },
  {
    english: '8 of 13 notes right. Five not right, the first F♯ instead of E going up; two keys too many.',
    verdict: '8 von 13 Tönen richtig. Fünf nicht richtig, zuerst Fis statt E aufwärts; zwei Tasten zu viel.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english:
      '25 of 26 notes right. One wrong: F♯ instead of E going up (left hand); A is struck twice coming down.',
    verdict:
      '25 von 26 Tönen richtig. Einer falsch: Fis statt E aufwärts (linke Hand); A ist abwärts zweimal angeschlagen.',
    nextStep:
      'linke Hand allein, nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english: '12 of 13 notes right. One wrong: F♯ instead of E going up; three more things.',
    verdict: '12 von 13 Tönen richtig. Einer falsch: Fis statt E aufwärts; dazu drei weitere Dinge.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 48, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; dann das Ganze.',
  },
  {
    english:
      'Every note right. The crossing comes late going up to A and going up to D, by 120 ms; the rest is even.',
    verdict:
      'Jeder Ton richtig. Der Untersatz aufwärts zu A und der Untersatz aufwärts zu D kommen zu spät, um 120 ms; der Rest ist gleichmäßig.',
    nextStep:
      'nur Fis–Gis–A–H, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt. Bereite den Ton nach dem Unter- oder Übersatz früh vor, und lass die Taste dahinter im Vorbeigehen los.',
  },
  {
    english: 'Every note right. E going up comes late, by 130 ms; the rest is even.',
    verdict: 'Jeder Ton richtig. E aufwärts kommt 130 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 60, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist; dann das Ganze.',
  },
  {
    english: 'Every note right. E going up comes late, by 130 ms; the rest is even.',
    verdict: 'Jeder Ton richtig. E aufwärts kommt 130 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur A–Cis–E–A, ♩ = 60, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist; dann das Ganze.',
  },
  {
    english: 'Every note right. A going up comes late, by 130 ms; the rest is even.',
    verdict: 'Jeder Ton richtig. A aufwärts kommt 130 ms zu spät; der Rest ist gleichmäßig.',
    nextStep:
      'nur Cis–E–A–Cis, ♩ = 60, zwei Töne auf jeden Schlag, mit dem Puls, bis es dreimal hintereinander gleichmäßig ist; dann das Ganze.',
  },
  {
    english: 'Every note right, and even; you slow down into the end, from ♩ = 80 to 58.',
    verdict: 'Jeder Ton richtig und gleichmäßig; zum Schluss wirst du langsamer, von ♩ = 80 auf 58.',
    nextStep: 'dasselbe noch einmal; dreimal hintereinander an zwei Tagen, dann sitzt es.',
  },
  {
    english: 'Every note right, and even; the last note comes broadly, 200 ms later than even.',
    verdict: 'Jeder Ton richtig und gleichmäßig; der letzte Ton kommt breit, 200 ms später als gleichmäßig.',
    nextStep: 'dasselbe noch einmal; dreimal hintereinander an zwei Tagen, dann sitzt es.',
  },
  {
    english: 'Every note right. Played long–short: meant so?',
    verdict: 'Jeder Ton richtig. Gespielt lang–kurz: so gemeint?',
    nextStep:
      'Wenn du es so wolltest, dasselbe noch einmal; wenn nicht, mit dem Puls, bis es zweimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right. The tempo sways between ♩ = 68 and 97, smoothly.',
    verdict: 'Jeder Ton richtig. Das Tempo schwingt sanft zwischen ♩ = 68 und 97.',
    nextStep:
      'Wenn du es so wolltest, dasselbe noch einmal; wenn nicht, mit dem Puls, bis es zweimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Three in a row, every note right and even: this hand is ready.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und gleichmäßig: Diese Hand sitzt.',
    nextStep: 'dasselbe, ♩ = 86, zwei Töne auf jeden Schlag, bis es dreimal hintereinander gleichmäßig ist.',
  },
  {
    english: 'Every note right, and even.',
    verdict: 'Jeder Ton richtig und gleichmäßig.',
    nextStep: 'dasselbe noch einmal; dreimal hintereinander an zwei Tagen, dann sitzt es.',
  },
  {
    english: 'Every note right, and even, twice in a row. Once more like that.',
    verdict: 'Jeder Ton richtig und gleichmäßig, zweimal hintereinander. Noch einmal so.',
    nextStep: 'dasselbe noch einmal; dreimal hintereinander an zwei Tagen, dann sitzt es.',
  },
  {
    english: 'Three in a row, every note right and even: the right hand is ready.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und gleichmäßig: Die rechte Hand sitzt.',
    nextStep:
      'die linke Hand allein, ♩ = 80, zwei Töne auf jeden Schlag, bis es dreimal hintereinander gleichmäßig ist; dann beide Hände zusammen.',
  },
  {
    english: 'Three in a row, every note right and even: the right hand is ready.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und gleichmäßig: Die rechte Hand sitzt.',
    nextStep:
      'beide Hände, A–Cis–E–A–Cis–E–A, ♩ = 53, zwei Töne auf jeden Schlag, bis es dreimal hintereinander stimmt; die linke Hand sitzt auch.',
  },
  {
    english: 'A major is ready at ♩ = 80: three in a row, every note right and even.',
    verdict: 'A-Dur sitzt bei ♩ = 80: dreimal hintereinander jeder Ton richtig und gleichmäßig.',
    nextStep:
      'dasselbe, ♩ = 86, zwei Töne auf jeden Schlag, bis es dreimal hintereinander gleichmäßig ist; oder die nächste Tonart im Quintenzirkel, E-Dur.',
  },
  {
    english: 'Three in a row, every note right and even.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und gleichmäßig.',
    nextStep: 'noch einmal an einem anderen Tag; dann sitzt es.',
  },
  {
    english: 'Three in a row, every note right and even.',
    verdict: 'Dreimal hintereinander jeder Ton richtig und gleichmäßig.',
    nextStep:
      'die linke Hand allein, ♩ = 80, zwei Töne auf jeden Schlag, bis es dreimal hintereinander gleichmäßig ist; dann beide Hände zusammen.',
  },
];
