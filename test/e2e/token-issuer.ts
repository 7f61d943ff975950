import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { exportJWK, generateKeyPair, SignJWT, type CryptoKey, type JWK } from 'jose';

/** An issuer of tokens on loopback: its keys are real, and it counts who asks for them. */
export class LoopbackIssuer {
  readonly issuer = 'https://id.brindle.example';
  /** how often its keys were asked for */
  asked = 0;
  /** paths that were asked for */
  readonly paths: string[] = [];
  /** what it answers; keys while undefined */
  fault:
    | { readonly status: number; readonly headers?: Record<string, string>; readonly body?: string }
    | undefined;
  private readonly published: JWK[] = [];
  private readonly secret = new Map<string, { readonly alg: string; readonly key: CryptoKey }>();

  private constructor(private readonly server: Server) {}

  static async start(): Promise<LoopbackIssuer> {
    const server = createServer();
    const issuer = new LoopbackIssuer(server);
    server.on('request', (request, response) => {
      issuer.asked += 1;
      issuer.paths.push(request.url ?? '');
      const { status = 200, headers = {}, body } = issuer.fault ?? {};
      response.writeHead(status, { 'content-type': 'application/json', ...headers });
      response.end(body ?? JSON.stringify({ keys: issuer.published }));
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    return issuer;
  }

  get jwksUrl(): string {
    return `http://127.0.0.1:${String((this.server.address() as AddressInfo).port)}/keys`;
  }

  /** Makes a key and publishes its public half, unless told not to. */
  async addKey(kid: string, alg: string, isPublished = true): Promise<JWK> {
    const { publicKey, privateKey } = await generateKeyPair(alg, { extractable: true });
    const jwk = { ...(await exportJWK(publicKey)), kid, alg, use: 'sig' };
    if (isPublished) this.published.push(jwk);
    this.secret.set(kid, { alg, key: privateKey });
    return jwk;
  }

  /** A token as the issuer signs it; header and claims may be anything. */
  sign(claims: Record<string, unknown>, kid = 'one', header: Record<string, unknown> = {}): Promise<string> {
    const { alg, key } = this.secret.get(kid)!;
    return new SignJWT(claims).setProtectedHeader({ alg, kid, typ: 'at+jwt', ...header }).sign(key);
  }

  close(): Promise<void> {
    this.server.closeAllConnections();
    return new Promise((resolve) => this.server.close(() => resolve()));
  }
}
