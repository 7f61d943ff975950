import { Module } from '@nestjs/common';
import { CatalogueListsController } from './catalogue-lists.controller.js';

@Module({ controllers: [CatalogueListsController] })
export class CatalogueListsModule {}
