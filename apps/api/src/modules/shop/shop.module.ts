import { Module } from '@nestjs/common';
import {
  ChangeSettingsUseCase,
  ChangeUserUseCase,
  Clock,
  CreateApiKeyUseCase,
  IdSource,
  ListApiKeysUseCase,
  ListUsersUseCase,
  RecordUserUseCase,
  RevokeApiKeyUseCase,
  RotateApiKeyUseCase,
  ShowSettingsUseCase,
  UnitOfWork,
} from '@endfloat/workshop';
import { useCase } from '../../http/index.js';
import { ApiKeysController } from './api-keys.controller.js';
import { SettingsController, UsersController } from './shop.controller.js';

@Module({
  controllers: [SettingsController, UsersController, ApiKeysController],
  providers: [
    useCase(ShowSettingsUseCase, UnitOfWork),
    useCase(ChangeSettingsUseCase, UnitOfWork, Clock),
    useCase(RecordUserUseCase, UnitOfWork, Clock, IdSource),
    useCase(ChangeUserUseCase, UnitOfWork, Clock),
    useCase(ListUsersUseCase, UnitOfWork),
    useCase(CreateApiKeyUseCase, UnitOfWork, Clock),
    useCase(ListApiKeysUseCase, UnitOfWork),
    useCase(RevokeApiKeyUseCase, UnitOfWork, Clock),
    useCase(RotateApiKeyUseCase, UnitOfWork, Clock),
  ],
})
export class ShopModule {}
