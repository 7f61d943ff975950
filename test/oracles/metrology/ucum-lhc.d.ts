/** The part of the reference implementation that the oracle uses; the package ships no types. */
declare module '@lhncbc/ucum-lhc' {
  interface ConversionOutcome {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
  }
  interface UcumReference {
    convertUnitTo(fromUnitCode: string, fromValue: number, toUnitCode: string): ConversionOutcome;
  }
  const reference: { readonly UcumLhcUtils: { getInstance(): UcumReference } };
  export default reference;
}
