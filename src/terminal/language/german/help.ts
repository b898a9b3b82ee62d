import type { Help } from '../english/help.ts';

const CHOICE = `      --key KEY            "C major" ... "B major" (Dur), "C minor" ... (Moll), mit # oder b
      --form FORM          arpeggio, triads, broken-triads, progression, scale oder
                           eine andere, die "exercises" nennt
      --hands HANDS        left (linke), right (rechte), together (beide)
      --octaves N          1 bis 4, für arpeggio und scale; ohne Angabe 1
      --minor-scale KIND   natural, harmonic, melodic; ohne Angabe harmonic
      --fingering NAMEN    andere Finger, etwa second-first,thumbs-together; "exercises"
                           mit --key und --form nennt, welche es gibt
      --notes-a-beat N     1, 2, 3, 4 oder 6, für Tonleitern und Arpeggien
      --register LAGE      1-up bis 3-up, 1-down bis 3-down: Oktaven von der
                           gedruckten Lage aus`;

const PASSAGE = `      --exercise FILE      stattdessen eine eigene Stelle: MusicXML, MIDI, ABC oder
                           Stellen, die Evenfall schrieb; bis zu 16 Takte
      --bars M-N           diese Takte daraus, wo FILE länger ist
      --passage N          die wievielte, wo FILE mehrere enthält; ohne Angabe 1`;

const LANGUAGE = '      --language LANGUAGE  en, de; ohne Angabe en';
const QUIET = '  -q, --quiet              kein Fortschritt, keine Bemerkungen auf stderr';

const FILES = `FILE ist WAV, FLAC, MP3, Ogg (Opus, Vorbis), WebM oder ein Video mit solchem Klang; -
ist die Standardeingabe. Mehrere Dateien kommen eine nach der anderen dran; eine, die
sich nicht lesen lässt, hält die anderen nicht auf.`;

const EXIT_CODES = `Rückgabe: 0 ausgewertet, 2 falscher Aufruf, 3 eine Datei lässt sich nicht lesen oder
dekodieren, 4 kein Spiel darin. Bei mehreren Dateien das Schlimmste.`;

/** The help of each command, and of all. */
export const HELP: Help = {
  analyse: `evenfall analyse FILE... [Optionen]

Sagt, was in der Aufnahme eines akustischen Klaviers gespielt wurde, und wie gleichmäßig.
Ohne --key, --form und --hands wird die Übung am Klang erkannt.

${CHOICE}
${PASSAGE}
      --among FILE         auch unter den eigenen Stellen in FILE erkennen
      --stretch STRECKE    nur diese Stellen waren zu üben, etwa 4-9;
                           up, down: nur der Weg hinauf oder hinab
      --times N            so oft hintereinander, 1 bis 12; sonst 1
      --rhythm RHYTHMUS    even, long-short, short-long, groups-of-2 (3, 4, 6),
                           stop-before-crossings, stop-on-each-beat, stop-on-each-step,
                           prepared-silently, one-note-more
      --blocked            jede Handlage als ein Akkord
      --touch ANSCHLAG     legato, detached, staccato
      --loudness STÄRKE    p, mf, f, growing, fading, accents-of-2 (3, 4, 6),
                           left-over-right, right-over-left
      --ladder N           jedes Mal um so viel schneller, bis es ungleichmäßig wird
      --as-chosen          miss das, auch wenn sicher etwas anderes gespielt wurde
      --bpm N              Zieltempo, Schläge in der Minute
      --even N             Schwankung der Zeit, die bei sieben Tönen in der Sekunde
                           gleichmäßig ist, in Prozent, 2 bis 30; sonst 8. Andere
                           Tempi folgen
      --piano FILE         was man von diesem Klavier weiß, aufgehoben von Aufruf zu
                           Aufruf; nach einzelnen Händen sind beide besser zu hören,
                           und die mit --hands genannte Hand gilt als wahrscheinlicher
      --levels FILE        Stufen einer Lehrkraft, wie das Tagebuch sie sichert: wie schnell
                           die Übung sein muss, bevor es heißt, sie sitzt
${LANGUAGE}
      --json               ein JSON-Objekt je Datei („evenfall-report“) statt Worten
      --list LISTE         weitere Dateien, eine je Zeile; - ist die Standardeingabe
      --lines OUT.jsonl    stattdessen: ein JSON-Objekt je Datei, sobald sie fertig ist,
                           jede für sich; macht weiter, wo es aufhörte; - gibt es aus
      --shard K/N          von --lines nur dieser Teil, etwa 3/16
      --force              auch überschreiben, was evenfall nicht geschrieben hat
${QUIET}

${FILES}

${EXIT_CODES}`,
  desk: `evenfall desk FOLDER... [Optionen]

Sortiert einen Stapel Aufnahmen: teilt jede in ihre Versuche, erkennt und misst sie und
nennt sie Person für Person, mit dem, was sich seit dem letzten Versuch derselben Übung
geändert hat. FOLDER kann auch eine Aufnahme oder ein ZIP mit Aufnahmen sein; höchstens
200 Aufnahmen auf einmal. Was einmal sortiert ist, bleibt aufgehoben.

      --csv OUT.csv        dazu eine Tabelle, eine Zeile je Versuch; - gibt sie
                           statt der Liste aus
      --html OUT           dazu Seiten für den Browser, ab OUT/index.html
      --lines OUT.jsonl    stattdessen: ein JSON-Objekt je Aufnahme, sobald sie fertig ist,
                           beliebig viele; macht weiter, wo es aufhörte; - gibt es aus
      --shard K/N          von --lines nur dieser Teil, z. B. 3/16
      --list FILE          weitere Pfade, einer je Zeile; - ist die Standardeingabe
      --among FILE         auch unter den eigenen Stellen in FILE erkennen
      --students FILE      wer bekannt ist, eine Zeile je Name: „Mara Lind: mara, ML“;
                           „-72 cents“ dabei: so weit liegt ihr Klavier daneben
      --force              auch überschreiben, was evenfall nicht geschrieben hat
      --json               ein JSON-Objekt („evenfall-desk“) statt Worten
      --bpm N              Zieltempo, Schläge in der Minute
      --even N             Schwankung der Zeit, die bei sieben Tönen in der Sekunde
                           gleichmäßig ist, in Prozent, 2 bis 30; sonst 8. Andere
                           Tempi folgen
      --workers N          so viele Aufnahmen zugleich; sonst eine je Kern
      --fresh              alles neu sortieren
${LANGUAGE}
${QUIET}

Name: was davon im Ordner unter FOLDER steht, sonst im Dateinamen („Mara - D-Dur.m4a“,
„Tonleiter D - Mara“), sonst in FOLDER; --students sagt, wer gemeint ist. Kopien stehen
als solche da. Tag: nach dem Namen der Datei, sonst nach ihrer eigenen Zeit. Die
Aufnahmen werden nur gelesen. Strg-C hält an; derselbe Befehl macht weiter.

${EXIT_CODES}`,
  transcribe: `evenfall transcribe FILE... [Optionen]

Sagt, welche Tasten wann zu hören waren, was immer gespielt wurde.

      --json               ein JSON-Objekt je Datei („evenfall-notes“)
${LANGUAGE}
      --midi OUT.mid       die Töne in eine MIDI-Datei schreiben;
                           - ist die Standardausgabe
      --as-exercise OUT.json
                           was einmal langsam gespielt wurde, als Stelle für
                           --exercise auf Notenlinien legen; - ist die
                           Standardausgabe. Dazu:
      --bpm BPM            etwa wie schnell, Viertel je Minute; sonst 50;
                           free: jeder Ton oder Akkord wird ein Viertel
      --time TIME          die Taktart, etwa 3/4; sonst 4/4
      --hands HANDS        left, right, together (nach der Lage geteilt); sonst together
      --title TITLE        wie sie heißt; sonst wie die Datei
      --force              auch überschreiben, was evenfall nicht geschrieben hat
${QUIET}

${FILES}

${EXIT_CODES}`,
  review: `evenfall review FILE... [Optionen]

Schreibt, was in einer Rückmeldung steht oder was jemand geschickt hat: die Worte, jeden
Versuch mit seinem Urteil und den Bemerkungen dazu, und was zu üben ist. Eine Datei, die
keine Rückmeldung oder nicht in Ordnung ist, wird ganz abgelehnt, mit dem Grund.

      --json               ein JSON-Objekt je Datei („evenfall-review“), ohne die Klänge
      --html OUT.html      die Seite schreiben, die jeder Browser öffnet, ohne
                           Netz; - ist die Standardausgabe
      --force              auch überschreiben, was evenfall nicht geschrieben hat
${LANGUAGE}

FILE ist eine Rückmeldung oder mit Evenfall geschickte Versuche; - ist die Standardeingabe.

Rückgabe: 0 gelesen, 2 falscher Aufruf, 3 eine Datei ist abgelehnt oder nicht lesbar.`,
  exercises: `evenfall exercises [Optionen]

Nennt, was sich üben lässt; mit --key, was zu einer Tonart gehört; mit --key und --form
eine Übung Ton für Ton, mit Fingersatz.

${CHOICE}
${PASSAGE}
${LANGUAGE}
      --json               als JSON`,
  all: `evenfall hört Aufnahmen einer Übung auf einem akustischen Klavier und sagt genau, was
gespielt wurde und wie gleichmäßig.

  evenfall analyse FILE... [--key KEY --form FORM --hands HANDS] [--json]
  evenfall desk FOLDER... [--csv OUT.csv] [--html OUT] [--json]
  evenfall transcribe FILE... [--json] [--midi OUT.mid] [--as-exercise OUT.json]
  evenfall review FILE... [--json] [--html OUT.html]
  evenfall exercises [--key KEY [--form FORM]]
  evenfall COMMAND --help [--language de]
  evenfall --version

${EXIT_CODES}`,
};
