/**
 * The SHA-256 of bytes, in 64 hexadecimal digits, by the browser's own cryptography.
 *
 * @throws Error  in words for the person, where the browser withholds it (a page opened over plain http from afar)
 */
export async function sha256Hex(bytes: ArrayBuffer, subtle: SubtleCrypto | undefined): Promise<string> {
  if (subtle === undefined)
    throw new Error(
      'This browser can’t seal photos on this address. Open the program on the machine it runs on, or over https.',
    );
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
