/**
 * Currency codes by the number of decimals of their smaller unit. Funds codes, precious metals and test codes are left
 * out: nothing in a workshop is priced in them.
 *
 * @source ISO 4217, list of active codes and minor units (from memory; the exponents 0, 3 and 4 are the ones that matter)
 */
const codesByExponent: readonly (readonly [exponent: number, codes: string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [
    2,
    'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC ' +
      'CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR ' +
      'JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD ' +
      'NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN ' +
      'SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG',
  ],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
];

const exponents: ReadonlyMap<string, number> = new Map(
  codesByExponent.flatMap(([exponent, codes]) => codes.split(' ').map((code) => [code, exponent] as const)),
);

/** All known currency codes, sorted. */
export const currencyCodes: readonly string[] = [...exponents.keys()].sort();

/**
 * Decimals of a currency's smaller unit.
 *
 * @param currency  ISO 4217 code, upper case
 * @returns 0, 2, 3 or 4; undefined for an unknown code
 * @source ISO 4217 (from memory)
 * @example currencyExponent('JPY') // => 0
 */
export function currencyExponent(currency: string): number | undefined {
  return exponents.get(currency);
}
