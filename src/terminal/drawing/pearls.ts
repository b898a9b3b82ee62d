import type { Hand, Report, Language } from '../../engine/index.ts';
import { REPORTS } from '../language/index.ts';
import type { ReportStrings } from '../language/index.ts';
import { layOut } from './layout.ts';
import type { Pearl, Spot, LaidOut } from './layout.ts';
import { cutIntoLines } from './lines.ts';
import type { Line } from './lines.ts';
import { signed } from './text.ts';
import { Row } from './rows.ts';

/** Columns left of the string, for the hand and the time. */
const MARGIN = 7;
/** Hands further apart than this are told, ms: the default criterion of togetherness. */
const APART_MS = 40;
/** Below this nobody can tell which came first, ms (Hirsh 1959). */
const ORDER_MS = 20;

const SIGNS = {
  soft: '∙',
  middle: '•',
  loud: '●',
  missed: '○',
  unsure: '?',
  extra: '·',
  hook: '┬',
  string: '─',
};

/**
 * Report → the string of pearls in characters, as rows of `width` columns: time runs right and wraps; a pearl's size is
 * its loudness; ○ was missed; a wrong note hangs below with its name; · is extra; ⌒ is a crossing; ╵ shows where even
 * notes would fall. Two hands are two strings tied by threads that lean to the hand that came first.
 */
export function drawPearls(report: Report, width: number, language: Language = 'en'): Row[] {
  const laid = layOut(report, language);
  if (laid.spots.length === 0) return [];
  const { lines, columnsASec } = cutIntoLines(laid, width - MARGIN);
  return lines.flatMap((line, index) => [
    ...(index === 0 ? [] : [new Row(width)]),
    ...drawLine(line, laid, { columnsASec, width, t: REPORTS[language] }),
  ]);
}

/** How times become columns. */
interface Scale {
  readonly columnsASec: number;
  readonly width: number;
  readonly t: ReportStrings;
}

/** The rows of one hand on one line. */
interface HandRows {
  readonly arches: Row;
  readonly string: Row;
  readonly hanging: Row;
  readonly names: Row;
  readonly fingers: Row;
}

function drawLine(line: Line, laid: LaidOut, { columnsASec, width, t }: Scale): Row[] {
  const column = (timeSec: number): number =>
    Math.min(MARGIN + Math.round((timeSec - line.fromSec) * columnsASec), width - 1);
  const drawn = laid.hands.map((hand) => drawHand(hand, line, laid, column, { width, t }));
  const ticks = new Row(width);
  ticks.put(0, `${line.fromSec.toFixed(1).replace('.', t.decimalSign)} s`, 'quiet');
  for (const [step, timeSec] of laid.tickSec) {
    if (line.spots.some((spot) => spot.step === step) && column(timeSec) >= MARGIN) {
      ticks.put(column(timeSec), '╵', 'quiet');
    }
  }
  const [first, second] = drawn;
  const rows =
    second === undefined
      ? [first!.arches, first!.string, first!.hanging, ticks, first!.names, first!.fingers]
      : [
          ...[first!.fingers, first!.names, first!.arches, first!.string, first!.hanging],
          ...[drawThreads(line, column, width), second.arches, second.string, second.hanging, ticks],
          ...[second.names, second.fingers],
        ];
  return rows.filter((row) => !row.isEmpty);
}

function drawHand(
  hand: Hand,
  line: Line,
  laid: LaidOut,
  column: (timeSec: number) => number,
  { width, t }: Pick<Scale, 'width' | 't'>,
): HandRows {
  const rows = {
    arches: new Row(width),
    string: new Row(width),
    hanging: new Row(width),
    names: new Row(width),
    fingers: new Row(width),
  };
  rows.string.put(0, t.hands[hand], 'quiet');
  const last = line.spots.at(-1)!;
  rows.string.put(MARGIN, SIGNS.string.repeat(column(last.timeSec) + last.pearls.length - MARGIN), 'quiet');
  const taken = new Set<number>();
  let before: number | null = null;
  for (const spot of line.spots.filter((other) => other.hand === hand)) {
    const at = column(spot.timeSec);
    spot.pearls.forEach((pearl, i) => {
      const place = freeColumn(taken, at + i, width - 1);
      drawPearl(rows, pearl, place, spot.marked, t);
      taken.add(place);
    });
    // Below a single note its name stands anyway; of a chord only this says which ones are not there.
    const missing = spot.pearls.flatMap((pearl) => (pearl.kind === 'missed' ? [pearl.name] : []));
    if (spot.pearls.length > 1 && missing.length > 0) {
      rows.hanging.putBeside(at, `${t.without} ${missing.join(' ')}`, 'accent');
    }
    const wants = spot.marked || spot.pearls.some(({ kind }) => kind !== 'struck') ? 'accent' : 'ink';
    rows.names.putBeside(at, spot.name, wants);
    rows.fingers.putBeside(at, spot.fingers, 'quiet');
    if (spot.crossing !== null) {
      const { late, delayMs } = spot.crossing;
      const text = late && delayMs !== null ? `⌒ ${signed(delayMs)} ms` : '⌒';
      const middle = before === null ? at : Math.floor((before + at) / 2);
      rows.arches.putBeside(middle, text, late ? 'accent' : 'quiet');
    }
    before = at;
  }
  for (const extra of laid.extras) {
    if (extra.hand !== hand || extra.timeSec < line.fromSec || extra.timeSec >= line.toSec) continue;
    const at = freeColumn(taken, column(extra.timeSec), width - 1);
    taken.add(at);
    rows.string.put(at, SIGNS.extra, 'accent');
    rows.hanging.putBeside(at, extra.kind === 'extra' ? extra.name : '', 'accent');
  }
  return rows;
}

/** The free column nearest to `at`, after it rather, up to `last`. */
function freeColumn(taken: ReadonlySet<number>, at: number, last: number): number {
  for (let away = 0; ; away++) {
    const free = [at + away, at - away].find((column) => column <= last && !taken.has(column));
    if (free !== undefined) return free;
  }
}

function drawPearl(rows: HandRows, pearl: Pearl, at: number, marked: boolean, t: ReportStrings): void {
  switch (pearl.kind) {
    case 'struck':
      return rows.string.put(at, SIGNS[pearl.loudness], marked ? 'accent' : 'ink');
    case 'wrong': {
      rows.string.put(at, SIGNS.hook, 'accent');
      rows.hanging.putBeside(
        at,
        `${SIGNS[pearl.loudness]} ${pearl.name} ${t.insteadOf} ${pearl.wanted}`,
        'accent',
      );
      return;
    }
    case 'missed':
    case 'unsure':
    case 'extra':
      return rows.string.put(at, SIGNS[pearl.kind], 'accent');
  }
}

/** │ together, ╱ the left hand first, ╲ the right hand first: the thread leans the way the hands do. */
function drawThreads(line: Line, column: (timeSec: number) => number, width: number): Row {
  const row = new Row(width);
  for (const right of line.spots.filter(({ hand }) => hand === 'right')) {
    const left = line.spots.find(({ hand, step }) => hand === 'left' && step === right.step);
    if (left === undefined || !isPlayed(left) || !isPlayed(right)) continue;
    const apartMs = (left.timeSec - right.timeSec) * 1000;
    const sign = Math.abs(apartMs) < ORDER_MS ? '│' : apartMs < 0 ? '╱' : '╲';
    const tell = Math.abs(apartMs) > APART_MS;
    const text = tell ? `${sign} ${Math.abs(apartMs).toFixed(0)}` : sign;
    row.putBeside(column(Math.min(left.timeSec, right.timeSec)), text, tell ? 'accent' : 'quiet');
  }
  return row;
}

function isPlayed({ pearls }: Spot): boolean {
  return pearls.some(({ kind }) => kind === 'struck' || kind === 'wrong');
}
