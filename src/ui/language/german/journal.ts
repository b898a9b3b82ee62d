import { FORM_NAMES } from '../../../engine/index.ts';
import type { Strings } from '../english/index.ts';
import { attempts, inWords } from './amounts.ts';
import { LEVEL_TABLE } from './levels.ts';

const notes = (count: number): string => (count === 1 ? 'war ein Ton' : `waren ${inWords(count)} Töne`);

export const JOURNAL: Strings['journal'] = {
  title: 'Tagebuch',
  opening: 'Das Tagebuch wird geöffnet …',
  close: 'Schließen',
  locale: 'de-DE',
  FORMS: FORM_NAMES.de,
  HANDS: { left: 'linke Hand', right: 'rechte Hand', together: 'beide Hände' },
  LEVELS: { new: 'nicht gespielt', 'not-yet': 'noch nicht', nearly: 'fast', ready: 'sitzt' },
  // A noun is joined to its key, as it is spelt; what begins with an adjective follows it.
  called: (key, _tonic, form) => `${key}${/^\p{Lu}/u.test(form) ? '-' : ', '}${form}`,
  minorScales: {
    natural: 'natürliche Tonleiter',
    harmonic: 'harmonische Tonleiter',
    melodic: 'melodische Tonleiter',
  },
  octaves: (count) => `${count} ${count === 1 ? 'Oktave' : 'Oktaven'}`,
  attempts,
  playIt: 'Spielen',
  today: {
    title: 'Heute',
    minutes: 'Minuten',
    rest: (minutes) => `Dann ${minutes} Minuten Pause, die Hände im Schoß.`,
    length: (minutes, tempo) => `${minutes} ${minutes === 1 ? 'Minute' : 'Minuten'}${tempo}.`,
  },
  reasons: {
    longAgo: (days) =>
      days < 14
        ? `Seit ${days} Tagen nicht gespielt.`
        : days < 60
          ? `Seit ${Math.floor(days / 7)} Wochen nicht gespielt.`
          : `Seit ${Math.floor(days / 30)} Monaten nicht gespielt.`,
    upkeep: 'Sitzt; noch einmal, damit es bleibt.',
    handFirst: 'Diese Hand allein, bevor die Hände zusammen spielen.',
    first: 'Zum Anfang, jede Hand allein.',
    otherHand: 'Die andere Hand sitzt; jetzt diese allein.',
    together: 'Jede Hand allein sitzt: zusammen, zuerst langsamer.',
    beside: 'Etwas anderes in derselben Tonart; eine Hand nach der anderen.',
    nextForm: (key) => `Gehört zu ${key}; eine Hand nach der anderen.`,
    moreOctaves: (key) => `Alles in ${key} sitzt: über mehr Oktaven, eine Hand nach der anderen.`,
    nextKey: (key, next) => `${key} sitzt; ${next} ist die nächste Tonart.`,
    faster: (tempo) => `Das sitzt; jetzt schneller, bis ${tempo}.`,
  },
  shortfalls: {
    lastTime: (what) => `Beim letzten Mal ${what}.`,
    also: (what) => `Außerdem ${what}.`,
    wrong: (count) => `${notes(count)} falsch`,
    missed: (count) => (count === 1 ? 'fehlte ein Ton' : `fehlten ${inWords(count)} Töne`),
    extra: (count) => `${notes(count)} zu viel`,
    several: (wrong, missed, extra) => {
      const parts = [
        ...(wrong > 0 ? [`${wrong} falsch`] : []),
        ...(missed > 0 ? [`${missed} ausgelassen`] : []),
        ...(extra > 0 ? [`${extra} zu viel`] : []),
      ];
      return `${notes(wrong + missed + extra)} nicht richtig: ${parts.join(', ')}`;
    },
    unsure: (count, of) => `${count === 1 ? 'war' : 'waren'} ${count} von ${of} Tönen nicht zu bestimmen`,
    crossing: (amount) => `kam ein Unter- oder Übersatz ${amount} zu spät`,
    crossings: (count, amount) =>
      `kamen ${inWords(count)} Unter- oder Übersätze zu spät, der späteste um ${amount}`,
    evenness: (value, bound) =>
      `schwankte die Zeit von Ton zu Ton um ${value}; bis ${bound} gilt als gleichmäßig`,
    chords: (value, bound) =>
      `kamen die Töne eines Akkords ${value} auseinander; bis ${bound} gilt als zusammen`,
    hands: (value, bound) => `waren die Hände ${value} auseinander; bis ${bound} gilt als zusammen`,
    tempo: (bpm, least) => `war das Tempo ${bpm}; verlangt sind mindestens ${least}`,
    touch: {
      legato: (gap) => `waren zwischen den Tönen ${gap} still; verlangt ist legato`,
      detached: () => 'gingen die Töne ineinander über; verlangt ist non legato',
      staccato: () => 'klangen die Töne zu lang für das Staccato, das verlangt ist',
    },
    loudness: (value, bound) =>
      `schwankte die Lautstärke von Ton zu Ton um ${value}; verlangt sind höchstens ${bound}`,
    evennessUnknown: 'war die Gleichmäßigkeit nicht zu messen',
    tempoUnknown: 'war das Tempo nicht zu messen',
  },
  remedies: {
    notes: 'Langsamer, bis jeder Ton stimmt.',
    unsure: 'Näher am Klavier oder in einem ruhigeren Raum, damit jeder Ton zu hören ist.',
    evenness: 'Dasselbe, mit dem Puls.',
    crossings: 'Nur die Töne um den Unter- oder Übersatz, langsam; dann das Ganze.',
    chords: 'Alle Tasten des Akkords berühren, dann drücken.',
    hands: 'Langsamer, auf jedem Schlag anhalten, beide Hände zusammen.',
    tempo: 'Jedes Mal zwei oder drei Schläge schneller, solange es gleichmäßig bleibt.',
    touch: 'Langsamer, mit dem Ohr dabei, wie ein Ton an den nächsten schließt.',
    loudness: 'Langsamer, jeder Ton so laut wie der davor.',
    'evenness-unknown': 'Noch einmal, bis zum Ende und ohne anzuhalten.',
    'tempo-unknown': 'Noch einmal, bis zum Ende und ohne anzuhalten.',
  },
  inARow: (count, at) =>
    count === 1
      ? `Der letzte Versuch war richtig und gleichmäßig${at}.`
      : `Die letzten ${inWords(count)} Versuche waren richtig und gleichmäßig${at}.`,
  at: (tempo) => `, bei mindestens ${tempo}`,
  more: (count) =>
    count === 1 ? 'Noch einer wie dieser, und es sitzt.' : `Noch ${inWords(count)} wie dieser, und es sitzt.`,
  moreOnDays: (count, days) =>
    count === 1
      ? 'Noch einer wie dieser, an einem anderen Tag, und es sitzt.'
      : `Noch ${inWords(count)} wie dieser, ${days === 1 ? 'einer davon an einem anderen Tag' : `an ${inWords(days)} weiteren Tagen`}, und es sitzt.`,
  onDays: (days) =>
    days === 1
      ? 'Noch einmal an einem anderen Tag, und es sitzt.'
      : `Noch an ${inWords(days)} weiteren Tagen, und es sitzt.`,
  handsFirst: (hands) =>
    `Es sitzt, sobald ${hands.length === 1 ? `die ${hands[0]} allein` : 'jede Hand allein'} sitzt.`,
  cold: (right, days) =>
    `Erster Versuch des Tages: an ${['keinem', 'einem'][right] ?? inWords(right)} der letzten ${inWords(days)} Tage richtig und gleichmäßig.`,
  leastBpm: (sign) => `Sitzt ab ${sign} =`,
  notPlayedYet: 'Noch nicht gespielt.',
  overview: {
    title: 'Wo alles steht',
    order: 'in jedem Feld: linke Hand, rechte Hand, zusammen',
    captions: { major: 'Durtonarten, im Quintenzirkel', minor: 'Molltonarten, im Quintenzirkel' },
    key: 'Tonart',
    further: 'Weitere Formen, soweit du sie gespielt hast',
    columns: {
      arpeggio: 'Arpeg\u00adgio',
      scale: 'Ton\u00adleiter',
      triads: 'Drei\u00adklänge',
      'broken-triads': 'Ge\u00adbrochen',
      progression: 'Kadenz',
    },
    next: 'Als Nächstes:',
    beginIt: 'Beginnen',
  },
  trend: {
    when: 'Wann',
    evenness: 'Schwankung',
    notes: 'Töne',
    tempo: 'Tempo',
    notMeasured: 'nicht gemessen',
    label: (name, count) => `${name}: Schwankung, ${attempts(count)}`,
    fromTo: (first, last) => `, zuerst ${first}, zuletzt ${last}`,
    of: (count) => `Schwankung, ${attempts(count)}`,
    ofLast: (count, all) => `Schwankung, die letzten ${count} von ${all.toLocaleString('de-DE')} Versuchen`,
  },
  list: {
    title: 'Versuche',
    label: 'Versuche, der neueste zuerst',
    exercise: 'Übung',
    all: 'alle',
    empty:
      'Noch steht nichts darin. Was du aufnimmst, bleibt hier, mit Klang und Bericht, nur auf diesem Gerät, bis du es selbst weitergibst.',
    unread:
      'Das Tagebuch ließ sich nicht lesen: Versuche, die darin stehen, fehlen hier. Lade die Seite neu, um es noch einmal zu versuchen.',
    unanalysed: 'noch nicht angehört',
    noReport: 'nichts zu berichten war zu hören',
    right: (right, of, extra) => `${right} von ${of} richtig${extra > 0 ? `, ${extra} zu viel` : ''}`,
    evenness: (value) => `Schwankung ${value}`,
    today: (time) => `heute ${time}`,
    yesterday: (time) => `gestern ${time}`,
    remove: 'Löschen',
    removed: (what) => `Gelöscht: ${what}.`,
    undo: 'Rückgängig',
    deleted: (count) =>
      count === 1
        ? 'Ein gelöschter Versuch kann eine Woche lang zurückgeholt werden.'
        : `${count} gelöschte Versuche können eine Woche lang zurückgeholt werden.`,
    bringBack: 'Zurückholen',
    back: 'Das Tagebuch',
    storedOnly: 'Dieser Versuch ist gesichert, aber noch nicht angehört.',
    listen: 'Jetzt anhören',
    noSound: 'Der Klang dieses Versuchs ist nicht mehr da; der Bericht ist vollständig.',
  },
  criteria: {
    title: 'Wann etwas sitzt',
    about:
      'Kein Ton falsch, ausgelassen oder wiederholt, und was hier steht. Eine Lehrkraft kann es anders wollen: Hier wird ' +
      'es geändert. Was bei Unter- und Übersatz als zu spät gilt, gilt für Versuche von jetzt an; alles andere wird für alle neu beurteilt.',
    lines: {
      readyInARow: 'So viele Versuche hintereinander',
      readyDays: '… an so vielen verschiedenen Tagen',
      evennessPercent: 'Schwankung der Zeit bei sieben Tönen in der Sekunde, höchstens',
      crossingPercent: 'Ein Unter- oder Übersatz zu spät um höchstens, von seinem Abstand',
      chordSpreadMs: 'Erster bis letzter Ton eines Akkords, höchstens',
      handsApartMs: 'Hände auseinander, höchstens',
      tempoPercent: 'Unter dem verlangten Tempo, höchstens',
    },
    evenAt: (two, four, ten) =>
      `Was man als ungleich hört, hängt vom Tempo ab: Bei zwei Tönen in der Sekunde sind das ${two}, bei vier ${four}, bei zehn ${ten}. Bei Unter- und Übersatz steht ein Zehntel, schnell gespielt, für 24 ms; ein anderer Anteil gilt bei jedem Tempo.`,
    reset: 'Wie am Anfang',
  },
  fastest: {
    about: (tempo) => `Noch gleichmäßig bis: ${tempo}.`,
    atLeast: (tempo) => `Noch gleichmäßig bis: ${tempo}; schneller ging noch nichts schief.`,
    grew: (steps) => `So wuchs es: ${steps}.`,
  },
  levels: LEVEL_TABLE,
  overWeeks: {
    title: 'Über Wochen',
    about:
      'Derselbe Fehler an derselben Art von Stelle, Versuch um Versuch und in welcher Tonart auch immer; gesagt nur, wo es kein ' +
      'Zufall ist (ein exakter Test über die letzten 200 Versuche; in 95 von 100 Tagebüchern ohne solchen Fehler sagt er nichts).',
    looking: 'Die Versuche werden durchgesehen …',
    none: 'Kein Fehler kommt so oft wieder, dass es kein Zufall ist.',
    hands: { left: 'Linke Hand', right: 'Rechte Hand', together: 'Beide Hände' },
    places: {
      'degree-1': 'der Grundton',
      'degree-2': 'die zweite Stufe der Tonart',
      'degree-3': 'die dritte Stufe der Tonart',
      'degree-4': 'die vierte Stufe der Tonart',
      'degree-5': 'die fünfte Stufe der Tonart',
      'degree-6': 'die sechste Stufe der Tonart',
      'degree-7': 'die siebte Stufe der Tonart',
      'crossing-up': 'der Ton nach einem Unter- oder Übersatz aufwärts',
      'crossing-down': 'der Ton nach einem Unter- oder Übersatz abwärts',
      turn: 'der Ton am Wendepunkt',
    },
    kinds: { note: 'falsch oder ausgelassen', late: 'zu spät' },
    found: (hands, what, count, of, keys, ofKeys) =>
      `${hands}: ${what} in ${count} von ${of} Versuchen, in ${keys} von ${ofKeys} ${ofKeys === 1 ? 'Tonart' : 'Tonarten'}.`,
    then: (before, ofBefore, since, ofSince) =>
      `In der früheren Hälfte ${before} von ${ofBefore}, in der späteren ${since} von ${ofSince}.`,
    behind: (count) => `${count === 1 ? 'Der Versuch' : `Die ${count} Versuche`} dahinter`,
    coldBest: (cold, best, days) =>
      `Beim ersten Versuch des Tages schwankt es um ${cold}, beim besten um ${best} (die Mitte von ${inWords(days)} Tagen).`,
  },
  storage: {
    title: 'Auf diesem Gerät',
    toKeeping: 'Eine Kopie sichern',
    kept: (count, withSound, bytes) => {
      if (withSound === 0) return `${attempts(count)}, keiner mit Klang.`;
      return `${attempts(count)}, ${withSound === count ? 'alle' : withSound.toLocaleString('de-DE')} mit Klang (${bytes}).`;
    },
    use: (used, quota) => `Evenfall belegt ${used} von ${quota}, die dieser Browser erlaubt.`,
    persisted: 'Der Browser hat versprochen, es nicht von selbst zu löschen.',
    notPersisted:
      'Wenn der Platz knapp wird, kann der Browser es löschen, solange er nichts anderes verspricht.',
    nowhereElse: 'Es liegt nirgends sonst: Sichere es ab und zu in eine Datei.',
    remind: (count) =>
      `${attempts(count)} liegen nur auf diesem Gerät. Sichere das Tagebuch in eine Datei, dann hast du eine Kopie.`,
    export: 'Tagebuch in eine Datei',
    import: 'Tagebuch aus einer Datei',
    toImport: 'Ein Tagebuch zum Einlesen',
    persist: 'Den Browser bitten, es zu behalten',
    forget: (count, bytes) => `Den Klang von ${count} älteren Versuchen löschen (${bytes})`,
    file: 'Datei des Tagebuchs',
    written: (bytes) => `Geschrieben: ${bytes}.`,
    promised: 'Der Browser wird das Tagebuch nicht von selbst löschen.',
    notPromised:
      'Der Browser wollte es nicht versprechen. Die Seite zu installieren oder oft zu benutzen kann helfen; und sichere ' +
      'das Tagebuch ab und zu in eine Datei.',
    added: (count) => `${attempts(count)} dazugekommen`,
    same: (count) => `${count} schon da`,
    both: (count) => `${count} schon da, aber anders: beide bleiben`,
    refused: (count) => `${count} nicht übernommen`,
  },
};
