import type { Wording } from '../english/index.ts';
import type { ApartReason, Task } from '../types.ts';
import { capital, chordAfter, finger, fingerOf, hands, stretch } from './places.ts';

type Rows =
  | 'apartForNow'
  | 'crossingsBothWays'
  | 'crossingsOneWay'
  | 'crossingOne'
  | 'changeHesitates'
  | 'chordsSpread'
  | 'oneHandLeads'
  | 'handsApart'
  | 'lateTurn'
  | 'limping'
  | 'uneven'
  | 'drift'
  | 'underTempo';

const WAYS = { up: 'aufwärts', down: 'abwärts' } as const;
const HANDS = { left: 'linke', right: 'rechte' } as const;

type CrossingFacts = Parameters<Wording['crossingOne']>[0];

const comma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');

/** "der Daumen kommt … zu spät", "Finger 4 setzt … zu spät über" */
const late = ({ kind, here }: CrossingFacts, when: string): string =>
  kind === 'thumb-under'
    ? `der Daumen kommt ${when} zu spät`
    : `${finger(here.finger)} setzt ${when} zu spät über`;

const movement = ({ kind, before, here }: CrossingFacts): string =>
  kind === 'thumb-under'
    ? `Führ den Daumen unter, während ${before.finger} noch ${before.name} hält.`
    : `Setz ${here.finger} über, während der Daumen noch ${before.name} hält.`;

const only = (task: Task): string =>
  `${hands(task.hands)}, nur ${stretch(task.stretch)}, bei ${task.tempoBpm}.`;

function apart(reason: ApartReason): string {
  switch (reason.kind) {
    case 'crossings':
      return 'Die Übergänge kommen in beiden Richtungen zu spät';
    case 'uneven':
      return `Zusammen schwankt die Zeit um ${reason.together} %, jede Hand allein höchstens um ${reason.alone} %`;
    case 'delay':
      return `Zusammen kommen die Übergänge ${reason.together} ms zu spät, in jeder Hand allein höchstens ${reason.alone} ms`;
  }
}

export const PLAYING: Pick<Wording, Rows> = {
  apartForNow: (reason, tempoBpm) => ({
    sentence: `Vorerst getrennte Hände: ${apart(reason)}`,
    emphasis: 'Vorerst getrennte Hände',
    nextStep: `Jede Hand allein, bis es gleichmäßig ist; dann zusammen bei ${tempoBpm}.`,
  }),
  crossingsBothWays: (lateMs, who, tempoBpm) => ({
    sentence: `Die Übergänge kommen aufwärts und abwärts zu spät, um ${lateMs} ms`,
    half: 'die Übergänge kommen in beiden Richtungen zu spät',
    emphasis: 'aufwärts und abwärts',
    nextStep: `${hands(who)}, eine Richtung nach der anderen, bei ${tempoBpm}; dann hinauf und hinunter.`,
  }),
  crossingsOneWay: (crossing, to, times, task) => {
    const way = WAYS[crossing.direction];
    const what = `${way}${to === null ? '' : ` bei ${to}`} ${times === 2 ? 'beide Male' : 'jedes Mal'}`;
    return {
      sentence: capital(late(crossing, what)),
      half: late(crossing, way),
      emphasis: what,
      nextStep: `${only(task)} ${movement(crossing)}`,
    };
  },
  crossingOne: (crossing, lateMs, task) => {
    const what = `${WAYS[crossing.direction]} bei ${crossing.here.name}`;
    return {
      sentence: capital(late(crossing, `${what} ${lateMs} ms`)),
      half: late(crossing, what),
      emphasis: what,
      nextStep: `${only(task)} ${movement(crossing)}`,
    };
  },
  changeHesitates: (to, ratio) => {
    const what = chordAfter('zu', to);
    return {
      sentence: `Der Wechsel ${what} dauert ${comma(ratio, 1)}-mal so lang wie die anderen`,
      half: `der Wechsel ${what} zögert`,
      emphasis: what,
      nextStep:
        'Halt den Akkord, schau auf den nächsten Griff, dann geh in einer Bewegung, ohne Ton dazwischen.',
    };
  },
  chordsSpread: (spreadMs, lastFinger) => ({
    sentence: `Die Akkorde sind nicht zugleich angeschlagen: ${spreadMs} ms vom ersten bis zum letzten Ton${
      lastFinger === null ? '' : `, ${fingerOf(lastFinger)} zuletzt`
    }`,
    half: 'die Akkorde sind nicht zugleich angeschlagen',
    emphasis: 'nicht zugleich angeschlagen',
    nextStep:
      lastFinger === null
        ? 'Berühr alle Tasten, bevor du drückst, dann lass den Arm auf einmal hineinfallen.'
        : `Berühr alle Tasten, bevor du drückst, und leg das Gewicht des Arms in ${fingerOf(lastFinger, 'den Daumen')}.`,
  }),
  oneHandLeads: (first, other, byMs) => {
    const what = `die ${HANDS[first]} Hand kommt ${byMs} ms früher`;
    return {
      sentence: `Die Hände sind nicht zusammen: ${capital(what)}`,
      half: what,
      emphasis: capital(what),
      nextStep: `Spiel noch einmal, und hör auf die ${HANDS[other]} Hand.`,
    };
  },
  handsApart: (tempoBpm) => ({
    sentence: 'Die Hände sind nicht zusammen, mal ist die eine zuerst, mal die andere',
    half: 'die Hände sind nicht zusammen',
    emphasis: 'mal ist die eine zuerst, mal die andere',
    nextStep: `langsamer, bei ${tempoBpm}: Bleib auf jedem Schlag stehen, beide Hände zugleich, dann geh weiter.`,
  }),
  lateTurn: (lateMs, chords) => {
    const top = chords ? 'oberste Akkord' : 'oberste Ton';
    return {
      sentence: `Der Weg abwärts beginnt ${lateMs} ms zu spät: Der ${top} wird gehalten`,
      half: `der ${top} wird zu lange gehalten`,
      emphasis: `Der ${top} wird gehalten`,
      nextStep: `Denk an den Weg abwärts, bevor du oben bist, und halt den ${top.replace('oberste', 'obersten')} nicht.`,
    };
  },
  limping: (long) => {
    const [rhythm, other] = long === 'first' ? ['lang–kurz', 'kurz–lang'] : ['kurz–lang', 'lang–kurz'];
    return {
      sentence: `Die Töne hinken paarweise, ${rhythm}`,
      emphasis: `paarweise, ${rhythm}`,
      nextStep: `erst umgekehrt, ${other}, dreimal; dann gleichmäßig.`,
    };
  },
  uneven: (percent, who, tempoBpm) => ({
    sentence: `Das Ganze ist ungleichmäßig: Die Zeit von Ton zu Ton schwankt um ${percent} %`,
    emphasis: 'Das Ganze ist ungleichmäßig',
    nextStep: `${hands(who)}, langsamer, bei ${tempoBpm}, mit dem Puls.`,
  }),
  drift: (slower, fromBpm, toBpm, tempoBpm) => {
    const what = `von ${fromBpm} auf ${toBpm}`;
    const way = slower ? 'schleppt' : 'eilt';
    return {
      sentence: `Es ${way}, ${what}`,
      half: `es ${way}, ${what}`,
      emphasis: what,
      nextStep: `mit dem Puls, 10 % langsamer, bei ${tempoBpm}.`,
    };
  },
  underTempo: (playedBpm, aimBpm, nextBpm) => ({
    sentence: `Gleichmäßig, bei ${playedBpm}; das Ziel ist ${aimBpm}`,
    emphasis: `das Ziel ist ${aimBpm}`,
    nextStep: `dasselbe bei ${nextBpm}.`,
  }),
};
