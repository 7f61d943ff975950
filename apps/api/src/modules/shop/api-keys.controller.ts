import { createHash, randomBytes } from 'node:crypto';
import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import {
  ApiKeyList,
  KeyPath,
  ApiKeyResponse,
  CreateApiKeyRequest,
  NewApiKeyResponse,
  RotateApiKeyRequest,
} from '@endfloat/contracts';
import {
  CreateApiKeyUseCase,
  IdSource,
  ListApiKeysUseCase,
  RevokeApiKeyUseCase,
  RotateApiKeyUseCase,
  type Caller,
} from '@endfloat/workshop';
import { writeKeyPrefix } from '../../http/access/key-prefix.js';
import { Allow, Answer, CurrentCaller } from '../../http/index.js';
import { presentApiKey } from './shop.presenter.js';

@Controller('v1/api-keys')
export class ApiKeysController {
  constructor(
    private readonly ids: IdSource,
    private readonly create: CreateApiKeyUseCase,
    private readonly list: ListApiKeysUseCase,
    private readonly revoke: RevokeApiKeyUseCase,
    private readonly rotate: RotateApiKeyUseCase,
  ) {}

  @Post()
  @Allow('owner')
  @Answer(NewApiKeyResponse, {
    created: true,
    location: () => '/v1/api-keys',
    summary: 'Make a key; it is shown this once',
  })
  async createApiKey(
    @CurrentCaller() caller: Caller,
    @Body() request: CreateApiKeyRequest,
  ): Promise<NewApiKeyResponse> {
    const id = this.ids.next();
    const { secret, secretHash } = newSecret();
    const made = await this.create.execute(caller, { ...request, id, secretHash });
    return { ...presentApiKey(made), key: `${writeKeyPrefix(caller.shopId, id)}.${secret}` };
  }

  @Post(':keyId/rotations')
  @Allow('owner')
  @Answer(NewApiKeyResponse, {
    created: true,
    location: () => '/v1/api-keys',
    summary: 'Give a key a successor, shown this once; both work for a while',
  })
  async rotateApiKey(
    @CurrentCaller() caller: Caller,
    @Param() { keyId }: KeyPath,
    @Body() request: RotateApiKeyRequest,
  ): Promise<NewApiKeyResponse> {
    const newId = this.ids.next();
    const { secret, secretHash } = newSecret();
    const { overlapMinutes, expiresAt } = request;
    const command = { id: keyId, newId, secretHash, overlapMinutes, expiresAt };
    const made = await this.rotate.execute(caller, command);
    return { ...presentApiKey(made), key: `${writeKeyPrefix(caller.shopId, newId)}.${secret}` };
  }

  @Get()
  @Allow('owner', 'auditor')
  @Answer(ApiKeyList, { summary: 'List the keys of the shop' })
  async listApiKeys(@CurrentCaller() caller: Caller): Promise<ApiKeyList> {
    return { items: (await this.list.execute(caller)).map(presentApiKey) };
  }

  @Post(':keyId/revocations')
  @Allow('owner')
  @Answer(ApiKeyResponse, { created: true, location: () => '/v1/api-keys', summary: 'End a key for good' })
  async revokeApiKey(@CurrentCaller() caller: Caller, @Param() { keyId }: KeyPath): Promise<ApiKeyResponse> {
    return presentApiKey(await this.revoke.execute(caller, keyId));
  }
}

function newSecret(): { readonly secret: string; readonly secretHash: string } {
  const secret = randomBytes(32).toString('base64url');
  return { secret, secretHash: createHash('sha256').update(secret).digest('hex') };
}
