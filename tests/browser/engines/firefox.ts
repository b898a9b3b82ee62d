import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { WebSocket } from 'ws';
import { openLoudspeaker } from './loudspeaker.ts';
import { asText, endsWithTests, placeToTouch, touchAt, type Engine, type Scheme, type Tab } from './tab.ts';

/** What the system asks of pages, as Firefox's preference for content numbers it. */
const SCHEMES: Readonly<Record<Scheme, number>> = { dark: 0, light: 1 };

/** A microphone that nobody has to allow and that gives a tone (Firefox, "media.navigator" preferences). */
const PREFERENCES = {
  'media.navigator.streams.fake': true,
  'media.navigator.permission.disabled': true,
  'ui.prefersReducedMotion': 1,
};

interface Answer {
  readonly id?: number;
  readonly type: 'success' | 'error' | 'event';
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: string;
  readonly message?: string;
}
interface Called {
  readonly type: 'success' | 'exception';
  readonly result?: { readonly value?: string; readonly sharedId?: string };
  readonly exceptionDetails?: { readonly text: string };
}

/** Firefox by WebDriver BiDi (W3C), which it speaks itself. Without a loudspeaker it would never start its sound. */
export async function openFirefox(
  programs: { readonly firefox: string; readonly loudspeaker: string },
  scheme: Scheme = 'light',
): Promise<Engine> {
  const loudspeaker = await openLoudspeaker(programs.loudspeaker);
  const profile = mkdtempSync(join(tmpdir(), 'evenfall-firefox-'));
  writeFileSync(
    join(profile, 'user.js'),
    Object.entries({ ...PREFERENCES, 'layout.css.prefers-color-scheme.content-override': SCHEMES[scheme] })
      .map(([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`)
      .join(''),
  );
  const child = endsWithTests(
    spawn(
      programs.firefox,
      ['--headless', '--no-remote', '--remote-debugging-port=0', '--profile', profile, 'about:blank'],
      { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, PULSE_SERVER: loudspeaker.address } },
    ),
  );
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    createInterface(child.stderr).on('line', (line) => {
      const found = /WebDriver BiDi listening on (ws:\S+)/.exec(line);
      if (found !== null) resolve(found[1]!);
    });
    child.once('exit', (code) =>
      reject(new Error(`${programs.firefox} ended with ${code} before it listened`)),
    );
  });
  const send = await converse(`${address}/session`);
  const { capabilities } = (await send('session.new', { capabilities: {} })) as {
    readonly capabilities: { readonly browserVersion: string };
  };
  const { contexts } = (await send('browsingContext.getTree', {})) as {
    readonly contexts: readonly { readonly context: string }[];
  };
  const { context } = contexts[0]!;

  const call = async (functionDeclaration: string, value: string): Promise<NonNullable<Called['result']>> => {
    const called = (await send('script.callFunction', {
      functionDeclaration,
      arguments: [{ type: 'string', value }],
      target: { context },
      awaitPromise: true,
      userActivation: false,
    })) as unknown as Called;
    if (called.type === 'exception') throw new Error(called.exceptionDetails?.text);
    return called.result ?? {};
  };
  const run: Tab['run'] = async (inPage, ...values) =>
    JSON.parse((await call(asText(inPage), JSON.stringify(values))).value!) as never;
  const find = async (selector: string): Promise<{ readonly sharedId: string }> => {
    const { sharedId } = await call('(selector) => document.querySelector(selector)', selector);
    if (sharedId === undefined) throw new Error(`nothing on the page is ${selector}`);
    return { sharedId };
  };

  return {
    name: 'Firefox',
    version: capabilities.browserVersion,
    tab: {
      open: async (url) => void (await send('browsingContext.navigate', { context, url, wait: 'complete' })),
      reload: async () => void (await send('browsingContext.reload', { context, wait: 'complete' })),
      load: async (script) => void (await call(`() => { ${script} }`, '')),
      run,
      touch: async (selector) =>
        void (await send('input.performActions', {
          context,
          actions: [touchAt(await run(placeToTouch, selector))],
        })),
      give: async (selector, path) =>
        void (await send('input.setFiles', { context, element: await find(selector), files: [path] })),
      resize: async (width, height) =>
        void (await send('browsingContext.setViewport', { context, viewport: { width, height } })),
    },
    close: async () => {
      await send('browser.close', {});
      await ended;
      await loudspeaker.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

/** Opens a connection → what sends a command and waits for its answer. */
async function converse(
  address: string,
): Promise<(method: string, params: object) => Promise<Readonly<Record<string, unknown>>>> {
  const socket = new WebSocket(address);
  await new Promise<void>((resolve, reject) => socket.once('open', () => resolve()).once('error', reject));
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on('message', (bytes: Buffer) => {
    const answer = JSON.parse(bytes.toString()) as Answer;
    if (answer.id === undefined) return;
    waiting.get(answer.id)?.(answer);
    waiting.delete(answer.id);
  });
  let id = 0;
  return async (method, params) => {
    id += 1;
    const answered = new Promise<Answer>((resolve) => waiting.set(id, resolve));
    socket.send(JSON.stringify({ id, method, params }));
    const { type, result = {}, error, message } = await answered;
    if (type === 'error') throw new Error(`${method}: ${error}: ${message}`);
    return result;
  };
}
