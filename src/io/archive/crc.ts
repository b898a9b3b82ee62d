/** The reversed polynomial of the checksum that zip keeps of each member (APPNOTE.TXT 6.3.10, 4.4.7). */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = (rest & 1) === 1 ? POLYNOMIAL ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/** Bytes → their CRC-32, unsigned. Of "123456789" it is cbf43926 (the check value of its catalogues). */
export function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (let at = 0; at < bytes.length; at++) rest = TABLE[(rest ^ bytes[at]!) & 0xff]! ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
