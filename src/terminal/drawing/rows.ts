/** ink: what is there; quiet: help for the eye; accent: look here. */
export type Tone = 'ink' | 'quiet' | 'accent';

interface Cell {
  readonly text: string;
  readonly tone: Tone;
}

/** One line of characters, `width` wide, that is written into at any column. */
export class Row {
  readonly #cells: (Cell | undefined)[] = [];
  readonly #width: number;

  constructor(width: number) {
    this.#width = width;
  }

  get isEmpty(): boolean {
    return this.#cells.length === 0;
  }

  /** Writes over what is there. */
  put(column: number, text: string, tone: Tone): void {
    [...text].forEach((letter, i) => (this.#cells[column + i] = { text: letter, tone }));
  }

  isFree(column: number, length: number): boolean {
    for (let i = column; i < column + length; i++) if (this.#cells[i] !== undefined) return false;
    return true;
  }

  /** Writes at the free place nearest to `column`, to the right rather, a space apart from what stands beside it. */
  putBeside(column: number, text: string, tone: Tone): void {
    const length = [...text].length;
    const last = this.#width - length;
    const fits = (at: number): boolean => at <= last && this.isFree(Math.max(at - 1, 0), length + 2);
    for (let away = 0; away < this.#width; away++) {
      const at = [column + away, column - away].find((place) => place >= 0 && fits(place));
      if (at !== undefined) return this.put(at, text, tone);
    }
  }

  /** The line without spaces at its end; `paint` turns a run of one tone into what is printed. */
  toLine(paint: (text: string, tone: Tone) => string): string {
    let line = '';
    let run = '';
    let tone: Tone = 'ink';
    for (let i = 0; i < this.#cells.length; i++) {
      const cell: Cell = this.#cells[i] ?? { text: ' ', tone };
      if (cell.tone !== tone) {
        line += run && paint(run, tone);
        run = '';
        tone = cell.tone;
      }
      run += cell.text;
    }
    return line + (run && paint(run, tone));
  }
}
