const idBytes = 16;

/**
 * The public part of a key: base64url of the shop's id and the key's id. It names where to look, so that the shop is
 * known before anything of it is read; it proves nothing.
 */
export function writeKeyPrefix(shopId: string, keyId: string): string {
  return Buffer.from(`${shopId}${keyId}`.replaceAll('-', ''), 'hex').toString('base64url');
}

/** Undefined where the text is no such prefix. */
export function readKeyPrefix(
  prefix: string,
): { readonly shopId: string; readonly keyId: string } | undefined {
  const bytes = Buffer.from(prefix, 'base64url');
  if (bytes.length !== 2 * idBytes || bytes.toString('base64url') !== prefix) return undefined;
  return { shopId: idOf(bytes.subarray(0, idBytes)), keyId: idOf(bytes.subarray(idBytes)) };
}

function idOf(bytes: Buffer): string {
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}
