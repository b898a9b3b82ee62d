import { counted } from '../../kit/figures.ts';
import type { Strings } from '../english/index.ts';

export const CLASS: Pick<
  Strings['teacher'],
  'glance' | 'cameIn' | 'piano' | 'example' | 'templates' | 'backup' | 'names'
> = {
  glance: {
    title: (count) => `Die Klasse: ${counted(count, 'Name', 'Namen')}`,
    search: 'Namen suchen',
    order: 'Zuerst',
    byHelp: 'wer am meisten Hilfe braucht',
    byName: 'nach Namen',
    byLast: 'wer zuletzt geschickt hat',
    nothingOpen: 'nichts offen',
    open: (count) => `${count} offen`,
    unheard: (count) => `${count} zu hören`,
    remarked: (count) => `${count} mit Bemerkungen`,
    untold: (count) => `nichts erkannt in ${counted(count, 'Aufnahme', 'Aufnahmen')}`,
    weeks: (sent, of) => `hat in ${sent} der letzten ${of} Wochen etwas geschickt`,
    nobody: 'So heißt niemand.',
    common: 'Jetzt häufig:',
    faults: {
      notes: (count) => `Töne daneben bei ${count}`,
      unsure: (count) => `Töne, die nicht zu erkennen waren, bei ${count}`,
      crossings: (count) => `später Unter- oder Übersatz bei ${count}`,
      evenness: (count) => `ungleichmäßige Zeit bei ${count}`,
      chords: (count) => `zerlegte Akkorde bei ${count}`,
      hands: (count) => `Hände auseinander bei ${count}`,
      tempo: (count) => `unter dem Tempo bei ${count}`,
      touch: (count) => `andere Artikulation als verlangt bei ${count}`,
      loudness: (count) => `ungleiche Lautstärke bei ${count}`,
      'evenness-unknown': (count) => `Gleichmäßigkeit nicht gemessen bei ${count}`,
      'tempo-unknown': (count) => `Tempo nicht gemessen bei ${count}`,
    },
    reviews: (count) => `${counted(count, 'Rückmeldung', 'Rückmeldungen')} auf einmal machen`,
    reviewsHint:
      'mit allem, was gehört oder angemerkt und noch nicht beantwortet ist; eine Datei für jeden Namen, in einem Zip',
    saved: (count, name, bytes) =>
      `${counted(count, 'Rückmeldung', 'Rückmeldungen')} gesichert in ${name} (${bytes}). Nichts wurde abgeschickt: Pack es aus und schick jede, wie du magst.`,
    fileName: 'rueckmeldungen',
  },
  cameIn: {
    title: (count) => `Alles, was kam (${count})`,
    hint: 'jede Aufnahme ganz, mit Gesprochenem und Pausen',
    hear: 'Ganz anhören',
    stop: 'Anhalten',
    opening: 'Wird geöffnet …',
    nothing: 'Darin war keine Übung zu finden.',
    found: (attempts, other) =>
      `${counted(attempts, 'Versuch', 'Versuche')}${other === 0 ? '' : `, ${counted(other, 'Stelle', 'Stellen')} mit anderem Spiel`}.`,
    kept: (count, bytes) =>
      `${counted(count, 'Aufnahme', 'Aufnahmen')}, wie sie kamen, ${bytes}, um sie ganz zu hören.`,
    letGo: 'Diese loslassen; ihre Versuche bleiben',
  },
  piano: {
    stands: (where) =>
      `Das Klavier steht ${where}, wie deine Berichtigung zeigte: Alle Aufnahmen von ihm werden so gelesen.`,
    reading: (done, of) => `${done} von ${counted(of, 'Aufnahme', 'Aufnahmen')} neu gelesen`,
    forget: 'Das vergessen',
  },
  example: {
    title: 'Zum Beispiel vorspielen',
    hint: 'am eigenen Klavier; es geht mit der Rückmeldung mit',
    there: 'vorgespielt; es geht mit der Rückmeldung mit',
    about:
      'Dein Spiel wird gehört wie ein Versuch und steht als Perlenschnur neben der anderen. Geurteilt wird darüber nicht.',
    speak: 'Jetzt vorspielen',
    speakAgain: 'Noch einmal vorspielen',
    recording: 'Es wird zugehört, bis zu drei Minuten',
    packing: 'Es wird ausgewertet …',
    hear: 'Dein Beispiel hören',
    throwAway: 'Das Beispiel verwerfen',
  },
  templates: {
    remarks: 'Deine Worte, zum Wiederverwenden',
    keep: 'Diese Worte zum Wiederverwenden aufheben',
    all: (count) => `Alle deine Worte (${count})`,
    fewer: 'Weniger',
    remove: 'Löschen',
    assignments: 'Deine eigenen Aufgaben',
    name: 'Ein Name für diese Übungen',
    keepAssignment: 'Diese Übungen zum Wiederverwenden aufheben',
  },
  backup: {
    never: 'All das liegt nur auf diesem Gerät und wurde noch nie anderswo gesichert.',
    last: (when) => `Alles wurde zuletzt ${when} in einer Datei gesichert.`,
    persisted: 'Der Browser hat versprochen, es nicht von selbst zu löschen.',
    notPersisted: 'Der Browser kann es löschen, wenn der Platz knapp wird.',
    persist: 'Den Browser bitten, es zu behalten',
    promised: 'Der Browser hat versprochen, es zu behalten.',
    notPromised: 'Der Browser hat nichts versprochen. Sichere es ab und zu in einer Datei.',
    save: 'Alles in einer Datei sichern',
    bringIn: 'Eine solche Datei hereinholen',
    toBringIn: 'Eine Datei mit allem, zum Hereinholen',
    working: 'Packt oder packt aus',
    fileName: 'evenfall-lehrkraft',
    saved: (name, bytes) =>
      `Gesichert als ${name} (${bytes}), dort, wohin dein Browser herunterlädt. Darin sind Aufnahmen deiner Schülerinnen und Schüler: Bewahr sie so auf, dass nur du sie öffnen kannst.`,
    broughtIn: (students, attempts, known, refused) =>
      `Hereingekommen: ${counted(students, 'Name', 'Namen')} und ${counted(attempts, 'Versuch', 'Versuche')}; ${counted(known, 'Versuch war', 'Versuche waren')} schon da. Hier wurde nichts überschrieben.` +
      (refused === 0 ? '' : ` ${counted(refused, 'Teil', 'Teile')} der Datei ließen sich nicht lesen.`),
  },
  names: {
    title: (count) => (count === 1 ? 'Stimmt dieser Name?' : `Stimmen diese ${count} Namen?`),
    about:
      'Die Namen stammen aus Ordnern und Dateinamen. Sag einmal, dass sie stimmen, oder wem die Aufnahmen gehören: Was so heißt, wird von da an erkannt.',
    all: 'Alle stimmen',
    right: 'Das stimmt',
    same: (name) => `Das ist ${name}`,
    name: 'Wem sie gehören',
    more: (count) => `und ${count} weitere`,
    given: (name) => `Diese Aufnahmen gehören jetzt ${name}.`,
  },
};
