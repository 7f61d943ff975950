/** Starting tables of the diagnosis, in the shape the diagnosis takes as an argument; a use case carries them across. */
export interface ShippedDiagnosisTables {
  readonly version: string;
  readonly origin: 'judgement';
  readonly causes: readonly { readonly id: string; readonly prior: number }[];
  readonly symptoms: readonly {
    readonly id: string;
    readonly presentGivenCause: Readonly<Record<string, number>>;
  }[];
  readonly checks: readonly {
    readonly id: string;
    readonly minutes: number;
    readonly openingMove: boolean;
    readonly prerequisites: readonly string[];
    readonly positiveGivenCause: Readonly<Record<string, number>>;
  }[];
}
