/** A fresh id of 32 hex digits. `randomUUID` is withheld on plain http in a workshop network; this is not. */
export const freshId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
