import { describe, expect, it } from 'vitest';
import { createShare } from '../../../src/io/share/index.ts';

const FILE = new File(['x'], 'attempts.zip', { type: 'application/zip' });
const system = (share: () => Promise<void>) =>
  createShare({ canShare: (data) => data?.files?.[0]?.type === 'application/zip', share });

describe('handing a file to the system', () => {
  it('is not offered where the system cannot, or not such a file', () => {
    expect(createShare({}).can(FILE)).toBe(false);
    expect(createShare({ share: () => Promise.resolve() }).can(FILE)).toBe(false);
    expect(system(() => Promise.resolve()).can(new File(['x'], 'x.txt', { type: 'text/plain' }))).toBe(false);
    expect(system(() => Promise.resolve()).can(FILE)).toBe(true);
  });

  it('says whether it was passed on or the sheet was left again', async () => {
    expect(await system(() => Promise.resolve()).share(FILE)).toBe(true);
    const left = system(() => Promise.reject(new DOMException('left', 'AbortError')));
    expect(await left.share(FILE)).toBe(false);
  });

  it('fails loudly where the system does', async () => {
    const refused = system(() => Promise.reject(new DOMException('no touch', 'NotAllowedError')));
    await expect(refused.share(FILE)).rejects.toThrow(/no touch/);
  });
});
