import { toPlain, wrapText } from './drawing/index.ts';
import type { Paper } from './drawing/index.ts';

/** A help as it is written → as it fits the terminal: what is too wide is broken anew, the rest stays. Pure. */
export function fitHelp(help: string, { columns, unicode }: Pick<Paper, 'columns' | 'unicode'>): string {
  const fits = (line: string): boolean => [...line].length <= columns;
  const lines = entriesOf(help).flatMap((entry) => (entry.every(fits) ? entry : anew(entry, columns)));
  return (unicode ? lines : lines.map(toPlain)).join('\n');
}

/** Lines of a help → those that belong together: an option, a call, or a paragraph. */
function entriesOf(help: string): readonly (readonly string[])[] {
  const entries: string[][] = [];
  for (const line of help.split('\n')) {
    const last = entries.at(-1);
    const goesOn = line !== '' && last !== undefined && last[0] !== '' && /^(?! {2,6}\S)/.test(line);
    if (goesOn) last.push(line);
    else entries.push([line]);
  }
  return entries;
}

/** An entry broken anew: what an option does beside its name, a call with its options indented, a paragraph from the margin. */
function anew([first = '', ...rest]: readonly string[], columns: number): readonly string[] {
  const [head = ''] = /^ +-.*?(?: {2,}|$)/.exec(first) ?? [];
  if (head === '') {
    const margin = /^ */.exec(first)![0];
    const hanging = margin === '' ? '' : `${margin}    `;
    return wrapText([first, ...rest].map((line) => line.trim()).join(' '), columns - hanging.length).map(
      (line, at) => (at === 0 ? margin : hanging) + line,
    );
  }
  const beside = first.slice(head.length);
  const indent = beside === '' ? /^ */.exec(rest[0] ?? '')![0].length : head.length;
  const words = [beside, ...rest.map((line) => line.trim())].filter((line) => line !== '').join(' ');
  const broken = wrapText(words, columns - indent);
  return beside === ''
    ? [first, ...broken.map((line) => ' '.repeat(indent) + line)]
    : broken.map((line, at) => (at === 0 ? head : ' '.repeat(indent)) + line);
}
