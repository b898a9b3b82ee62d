/**
 * Just-noticeable difference of one interval in an even sequence, ms: 6 ms for IOI under 240 ms, 2.5 % of the IOI above
 * (Friberg & Sundberg 1995).
 */
export function justNoticeableMs(ioiMs: number): number {
  return ioiMs < 240 ? 6 : 0.025 * ioiMs;
}
