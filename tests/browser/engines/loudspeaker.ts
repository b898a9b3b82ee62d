import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { endsWithTests } from './tab.ts';

/** A loudspeaker that nobody hears (PulseAudio's null sink), and where a program finds it. */
export interface Loudspeaker {
  /** PULSE_SERVER */
  readonly address: string;
  readonly close: () => Promise<void>;
}

export async function openLoudspeaker(program: string): Promise<Loudspeaker> {
  const folder = mkdtempSync(join(tmpdir(), 'evenfall-loudspeaker-'));
  const socket = join(folder, 'socket');
  const child = endsWithTests(
    spawn(
      program,
      [
        '-n',
        '--daemonize=no',
        '--exit-idle-time=-1',
        '--use-pid-file=no',
        `--load=module-native-protocol-unix socket=${socket} auth-anonymous=1`,
        '--load=module-null-sink',
      ],
      { stdio: 'ignore', env: { ...process.env, HOME: folder, XDG_RUNTIME_DIR: folder } },
    ),
  );
  const ended = once(child, 'exit');
  while (!existsSync(socket)) {
    if (child.exitCode !== null) throw new Error(`${program} ended with ${child.exitCode}`);
    await pause(10);
  }
  return {
    address: `unix:${socket}`,
    close: async () => {
      child.kill();
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
