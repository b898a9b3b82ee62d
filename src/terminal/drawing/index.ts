import { exerciseTitle, isHandKnown, tellKept, tellReport } from '../../engine/index.ts';
import type { Hand, Language, Report } from '../../engine/index.ts';
import { MESSAGES, REPORTS, localeOf } from '../language/index.ts';
import { asOptions } from './as-options.ts';
import { figures, notMeasured } from './figures.ts';
import { choiceOf } from './layout.ts';
import { drawPearls } from './pearls.ts';
import type { Tone } from './rows.ts';
import { endOf, harmless, toPlain, wrapText } from './text.ts';

export { asOptions, endOf, harmless, toPlain, wrapText };

/** The terminal that is drawn for. */
export interface Paper {
  readonly columns: number;
  readonly colour: boolean;
  /** false: ASCII only */
  readonly unicode: boolean;
}

/** Columns for the names of the figures. */
const LABEL_COLUMNS = 22;

/** Report → the lines that a teacher reads in a terminal. Pure. */
export function drawReport(report: Report, paper: Paper, language: Language = 'en'): string[] {
  const { columns } = paper;
  const { paint, print } = press(paper);
  const { audio, unsure } = report;
  const t = REPORTS[language];
  const locale = localeOf(language);
  const words = tellReport(report, locale);
  const picture = drawPearls(report, columns, language);
  const signs = picture.map((row) => row.toLine((text) => text)).join('');
  const legend = Object.entries(t.legend).flatMap(([sign, meaning]) =>
    signs.includes(sign) ? [`${sign} ${meaning}`] : [],
  );
  const hanging = (label: string, text: string, indent: number): string[] =>
    wrapText(text, columns - indent).map((line, i) =>
      i === 0 ? paint(label.padEnd(indent), 'quiet') + line : ' '.repeat(indent) + line,
    );
  return [
    ...wrapText(exerciseTitle(choiceOf(report), locale), columns).map((line) => paint(line, 'quiet')),
    '',
    ...accented(words.verdict, words.emphasis, columns, paint),
    // One thing alone has been said in the verdict.
    ...(words.list.length > 1 ? words.list : []).flatMap(({ text, steps: [step] }) =>
      hanging('- ', step === undefined ? text : `${text} (${t.step(step)})`, 2),
    ),
    ...hanging(`${t.next}: `, words.nextStep, t.next.length + 2),
    '',
    ...picture.map((row) => row.toLine(paint)),
    '',
    ...wrapText(legend.join(',  '), columns).map((line) => paint(line, 'quiet')),
    '',
    ...figures(report, t).flatMap(({ label, text }) => hanging(label, text, LABEL_COLUMNS)),
    ...howElse(report, language).flatMap(({ label, text }) => hanging(label, text, LABEL_COLUMNS)),
    ...notMeasured(report, t, locale).flatMap((text) => hanging('', text, 0)),
    ...unsure.flatMap(({ step, hand, reason, notice }) =>
      hanging(t.notSure, t.placed(step, hand, tellKept(notice ?? reason, locale)), LABEL_COLUMNS),
    ),
    ...audio.findings.flatMap(({ detail, notice }) =>
      hanging(t.sound, tellKept(notice ?? detail, locale), LABEL_COLUMNS),
    ),
  ].map(print);
}

/** What the attempt may be measured as instead, where that is open. */
function howElse(
  report: Report,
  language: Language,
): readonly { readonly label: string; readonly text: string }[] {
  const { report: t } = MESSAGES[language];
  const { chosen, exercise } = report;
  const likelihood = exercise.handLikelihood;
  const meant =
    chosen === undefined
      ? []
      : [{ label: t.chosen, text: t.asChosen(exerciseTitle(chosen, localeOf(language))) }];
  if (likelihood === undefined || isHandKnown(report)) return meant;
  const [likelier, other]: readonly Hand[] =
    likelihood.left > likelihood.right ? ['left', 'right'] : ['right', 'left'];
  const options = asOptions({ ...choiceOf(report), hands: other! });
  return [...meant, { label: t.hand, text: t.handOpen(t.hands[likelier!], t.hands[other!], options) }];
}

type Paint = (text: string, tone: Tone) => string;

/** How tones and signs come onto the paper. */
function press({ colour, unicode }: Paper) {
  const codes: Readonly<Record<Tone, string>> = { ink: '', quiet: '\x1b[2m', accent: '\x1b[1;94m' };
  const paint: Paint = (text, tone) => (colour && tone !== 'ink' ? `${codes[tone]}${text}\x1b[0m` : text);
  return { paint, print: (line: string) => (unicode ? line : toPlain(line)) };
}

/** A text wrapped, with the emphasis in the accent even where a line breaks in it. */
function accented(text: string, emphasis: string, columns: number, paint: Paint): string[] {
  const from = emphasis === '' ? -1 : text.indexOf(emphasis);
  const to = from + (from < 0 ? 0 : emphasis.length);
  let at = 0;
  return wrapText(text, columns).map((line) => {
    const start = text.indexOf(line, at);
    at = start + line.length;
    const a = Math.min(Math.max(from - start, 0), line.length);
    const b = Math.min(Math.max(to - start, 0), line.length);
    return b > a ? line.slice(0, a) + paint(line.slice(a, b), 'accent') + line.slice(b) : line;
  });
}
