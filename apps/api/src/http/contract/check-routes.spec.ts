import 'reflect-metadata';
import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import type { ModulesContainer } from '@nestjs/core';
import { IdField, NoMembers, TextField } from '@endfloat/contracts';
import { Allow, Public } from '../access/allow.decorator.js';
import { Answer } from '../answers/answer.decorator.js';
import { faultyRoutes } from './check-routes.js';
import { walkRoutes } from './route-walk.js';

class Note {
  @TextField({ description: 'text', max: 9 }) text!: string;
}
class NotePath {
  @IdField({ description: 'id' }) noteId!: string;
}
@NoMembers()
class Nothing {}
class Bare {
  text?: string;
}

/** The routes of controllers as the framework's container would list them. */
function routesOf(...controllers: (new () => object)[]) {
  const module = { controllers: new Map(controllers.map((metatype) => [metatype.name, { metatype }])) };
  return walkRoutes(new Map([['module', module]]) as unknown as ModulesContainer);
}
const faultsOf = (...controllers: (new () => object)[]) => faultyRoutes(routesOf(...controllers));

describe('faultyRoutes', () => {
  it('has nothing to say of routes that are declared in full', () => {
    @Controller({ path: 'notes', version: '1' })
    class Notes {
      @Post(':noteId/copies')
      @Allow('owner')
      @Answer(Note, { summary: 'Copy' })
      copyNote(@Param() path: NotePath, @Body() body: Note, @Query() query: Nothing): unknown {
        return [path, body, query];
      }
    }
    expect(faultsOf(Notes)).toEqual([]);
    expect(routesOf(Notes)).toMatchObject([
      {
        method: 'POST',
        path: '/v1/notes/:noteId/copies',
        operationId: 'copyNote',
        rules: { access: ['owner'] },
      },
    ]);
  });

  it.each(['interface', 'list', 'undeclared class'])(
    'refuses a body whose type is an %s, which would not be validated',
    (kind) => {
      const type = { interface: Object, list: Array, 'undeclared class': Bare }[kind];
      @Controller('notes')
      class Notes {
        @Post()
        @Allow('owner')
        @Answer(Note, { summary: 'Write' })
        writeNote(@Body() body: Note): Note {
          return body;
        }
      }
      Reflect.defineMetadata('design:paramtypes', [type], Notes.prototype, 'writeNote');
      expect(faultsOf(Notes)).toEqual([expect.stringContaining('Notes.writeNote takes a body of type')]);
    },
  );

  it('refuses a single member of a body, a path that is not read, and a route without rules or answer', () => {
    @Controller('notes')
    class Notes {
      @Post()
      @Allow('owner')
      @Answer(Note, { summary: 'Write' })
      writeNote(@Body('text') text: string): string {
        return text;
      }

      @Get(':noteId')
      @Public()
      @Answer(Note, { summary: 'Read' })
      readNote(): void {}

      @Get()
      listNotes(): void {}
    }
    expect(faultsOf(Notes)).toEqual([
      'Notes.writeNote takes the single member text of its body: take a class with fields',
      'Notes.readNote does not read noteId from its path',
      'Notes.listNotes does not say who may call it: @Allow(...) or @Public()',
      'Notes.listNotes does not say what it answers: @Answer, @AnswerNothing or @AnswerStream',
    ]);
  });

  it('refuses two operations of one name', () => {
    @Controller('notes')
    class Notes {
      @Get()
      @Public()
      @Answer(Note, { summary: 'Read' })
      readNote(): void {}
    }
    @Controller('other-notes')
    class OtherNotes {
      @Get()
      @Public()
      @Answer(Note, { summary: 'Read' })
      readNote(): void {}
    }
    expect(faultsOf(Notes, OtherNotes)).toEqual([
      expect.stringContaining('OtherNotes.readNote has the name of another operation'),
    ]);
  });
});
