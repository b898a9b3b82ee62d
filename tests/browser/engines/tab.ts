import type { ChildProcess } from 'node:child_process';

/** A program that the tests started, and that does not outlive them even where it was not yet all there. */
export function endsWithTests<Program extends ChildProcess>(program: Program): Program {
  process.once('exit', () => program.kill());
  return program;
}

/** A page in a real browser, by what both of the W3C's protocols for driving one have in common. */
export interface Tab {
  open(url: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs a script as it is. */
  load(script: string): Promise<void>;
  /** Runs a function in the page, with values that JSON can carry → what it returns or promises. It sees nothing of the test. */
  run<Result, Values extends readonly unknown[]>(
    inPage: (...values: Values) => Result | Promise<Result>,
    ...values: Values
  ): Promise<Result>;
  /** Touches what a selector finds first, as a hand does: the browser takes it for the user's wish. */
  touch(selector: string): Promise<void>;
  /** Hands a file to a field for files. */
  give(selector: string, path: string): Promise<void>;
  resize(width: number, height: number): Promise<void>;
}

/** How the system asks pages to be shown. */
export type Scheme = 'light' | 'dark';

/** A browser with one page, and what it needs beside it. */
export interface Engine {
  readonly name: string;
  readonly version: string;
  readonly tab: Tab;
  readonly close: () => Promise<void>;
}

/** To be run in the page: brings what a selector finds first to its middle → where a finger would touch it, CSS px. */
export function placeToTouch(selector: string): { readonly x: number; readonly y: number } {
  const found = document.querySelector(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  found.scrollIntoView({ block: 'center', behavior: 'instant' });
  const { left, top, width, height } = found.getBoundingClientRect();
  return { x: Math.round(left + width / 2), y: Math.round(top + height / 2) };
}

/** A finger that touches a place and lifts, as both protocols write it ("Actions"). */
export const touchAt = ({ x, y }: { readonly x: number; readonly y: number }) => ({
  type: 'pointer',
  id: 'finger',
  actions: [
    { type: 'pointerMove', x, y, origin: 'viewport' },
    { type: 'pointerDown', button: 0 },
    { type: 'pointerUp', button: 0 },
  ],
});

/** What the page runs: the function's own text, given its values as JSON, answering in JSON. */
export const asText = (inPage: (...values: never[]) => unknown): string =>
  `async (values) => JSON.stringify((await (${String(inPage)})(...JSON.parse(values))) ?? null)`;
