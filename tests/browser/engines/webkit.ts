import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { asText, endsWithTests, placeToTouch, touchAt, type Engine, type Scheme, type Tab } from './tab.ts';

/** How an element is named in what goes to and fro (WebDriver, "Elements"). */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** The system's look, which tells pages what scheme it is. */
const THEMES: Readonly<Record<Scheme, string>> = { light: 'Adwaita', dark: 'Adwaita:dark' };
/** Its row of buttons would not let the window be as narrow as a phone. */
const NARROW = '* { padding: 0; margin: 0; min-width: 0; border: 0; font-size: 2px; }';

/** WebKitGTK's own small browser by WebDriver (W3C), on a screen that nobody sees. */
export async function openWebKit(
  programs: { readonly driver: string; readonly webKit: string; readonly screen: string },
  scheme: Scheme = 'light',
): Promise<Engine> {
  const screen = endsWithTests(
    spawn(programs.screen, ['-displayfd', '1', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp'], {
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  );
  const display = await new Promise<string>((resolve, reject) => {
    createInterface(screen.stdout).once('line', resolve);
    screen.once('exit', (code) => reject(new Error(`${programs.screen} ended with ${code}`)));
  });
  const config = mkdtempSync(join(tmpdir(), 'evenfall-webkit-'));
  mkdirSync(join(config, 'gtk-3.0'));
  writeFileSync(join(config, 'gtk-3.0/gtk.css'), NARROW);
  const port = await freePort();
  const driver = endsWithTests(
    spawn(programs.driver, [`--port=${port}`], {
      stdio: 'ignore',
      env: {
        ...process.env,
        DISPLAY: `:${display}`,
        GTK_THEME: THEMES[scheme],
        XDG_CONFIG_HOME: config,
        // Its own walls need rights that a container does not give; it opens nothing but the tests' pages.
        WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
      },
    }),
  );
  const ask = async (method: 'GET' | 'POST' | 'DELETE', path: string, body?: object): Promise<unknown> => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const { value } = (await response.json()) as { readonly value: unknown };
    if (!response.ok) throw new Error(`${path}: ${JSON.stringify(value)}`);
    return value;
  };
  await listens(driver, () => ask('GET', '/status'));
  const { sessionId, capabilities } = (await ask('POST', '/session', {
    capabilities: {
      alwaysMatch: {
        browserName: 'MiniBrowser',
        timeouts: { script: 300_000, pageLoad: 300_000 },
        'webkitgtk:browserOptions': {
          binary: programs.webKit,
          args: ['--automation', '--features=+MockCaptureDevices'],
        },
      },
    },
  })) as { readonly sessionId: string; readonly capabilities: { readonly browserVersion: string } };
  const post = (path: string, body: object): Promise<unknown> =>
    ask('POST', `/session/${sessionId}/${path}`, body);
  const run: Tab['run'] = async (inPage, ...values) => {
    const { answer, error } = (await post('execute/async', {
      script: `const [values, done] = arguments;
            (${asText(inPage)})(values).then((answer) => done({ answer }), (error) => done({ error: String(error) }));`,
      args: [JSON.stringify(values)],
    })) as { readonly answer?: string; readonly error?: string };
    if (answer === undefined) throw new Error(error);
    return JSON.parse(answer) as never;
  };
  const find = async (selector: string): Promise<string> => {
    const found = (await post('element', { using: 'css selector', value: selector })) as {
      readonly [ELEMENT]: string;
    };
    return found[ELEMENT];
  };

  return {
    name: 'WebKit',
    version: capabilities.browserVersion,
    tab: {
      open: async (url) => void (await post('url', { url })),
      reload: async () => void (await post('refresh', {})),
      load: async (script) => void (await post('execute/sync', { script, args: [] })),
      run,
      touch: async (selector) =>
        void (await post('actions', { actions: [touchAt(await run(placeToTouch, selector))] })),
      give: async (selector, path) =>
        void (await post(`element/${await find(selector)}/value`, { text: path })),
      resize: async (width, height) => void (await post('window/rect', { width, height })),
    },
    close: async () => {
      await ask('DELETE', `/session/${sessionId}`);
      for (const child of [driver, screen]) {
        child.kill();
        if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
      }
      rmSync(config, { recursive: true, force: true });
    },
  };
}

/** A port that nothing listens on. */
async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  await once(server, 'close');
  return port;
}

/** Waits until a program that was just started answers. */
async function listens(child: ChildProcess, ask: () => Promise<unknown>): Promise<void> {
  while (child.exitCode === null) {
    const answers = await ask().then(
      () => true,
      () => false,
    );
    if (answers) return;
  }
  throw new Error(`${child.spawnfile} ended with ${child.exitCode} before it listened`);
}
