/** What a device signs to be paired: the code it was shown, and its own public key. */
export function pairingText(code: string, publicKey: string): string {
  return `underside pairing\n${code}\n${publicKey}`;
}

/** What a device signs to be let in: which device it says it is, and what it was asked to sign. */
export function challengeText(device: string, challenge: string): string {
  return `underside device\n${device}\n${challenge}`;
}
