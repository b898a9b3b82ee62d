/** Boxes that an MP4 or QuickTime file begins with (ISO/IEC 14496-12, 4.3 and 8.1; QuickTime File Format Specification). */
const FIRST_BOXES = ['ftyp', 'moov', 'mdat', 'wide', 'free', 'skip'];

/**
 * Whether an MP4 or QuickTime file ends before the box that says where its sound lies ("moov"), which most recorders write
 * last: it was cut off on its way, or the recorder was. False of all other files.
 */
export function isCutShort(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const nameAt = (at: number): string => String.fromCharCode(...bytes.subarray(at + 4, at + 8));
  if (bytes.length < 8 || !FIRST_BOXES.includes(nameAt(0))) return false;
  for (let at = 0; at + 8 <= bytes.length;) {
    const said = view.getUint32(at);
    // 1: 64 bits follow the name; 0: up to the end of the file.
    const isLong = said === 1 && at + 16 <= bytes.length;
    const size = isLong ? Number(view.getBigUint64(at + 8)) : said === 0 ? bytes.length - at : said;
    if (nameAt(at) === 'moov') return at + size > bytes.length;
    // No box is shorter than its own head: damage, which is told otherwise.
    if (size < 8) return false;
    at += size;
  }
  return true;
}
