import type { Abstract, FactoryProvider, Type } from '@nestjs/common';

/** Tokens for the constructor parameters of a class, in their order. */
type TokensOf<A extends readonly unknown[]> = { readonly [K in keyof A]: Abstract<A[K]> | Type<A[K]> };

/**
 * Provider of a use case, which is a plain class and knows no framework:
 * `useCase(RecordVehicleUseCase, UnitOfWork, Clock, IdSource)`.
 */
export function useCase<T, A extends unknown[]>(
  type: new (...parts: A) => T,
  ...ports: TokensOf<A>
): FactoryProvider<T> {
  return {
    provide: type,
    useFactory: (...parts: unknown[]) => new type(...(parts as A)),
    inject: [...(ports as readonly Type[])],
  };
}
