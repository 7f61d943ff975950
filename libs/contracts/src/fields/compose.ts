/** Several property decorators as one, applied in the order given. */
export function compose(...decorators: readonly PropertyDecorator[]): PropertyDecorator {
  return (prototype, key) => {
    for (const decorate of decorators) decorate(prototype, key);
  };
}
