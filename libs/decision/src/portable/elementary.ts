// The language fixes + - * / and Math.sqrt to the last bit, but leaves Math.exp and Math.log to the engine. An assessment
// is replayed to the last reported digit on any machine, so both are built here from the fixed operations alone.

const LN2_HIGH = 6.9314718036912381649e-1;
const LN2_LOW = 1.90821492927058770002e-10;
const LOWEST_EXPONENT = -1022;

/** Exact powers of two from 2^-1022 to 2^1023. */
const powersOfTwo: Float64Array = (() => {
  const powers = new Float64Array(2046);
  powers[-LOWEST_EXPONENT] = 1;
  for (let k = 1; k <= 1023; k += 1) powers[k - LOWEST_EXPONENT] = powers[k - 1 - LOWEST_EXPONENT]! * 2;
  for (let k = -1; k >= LOWEST_EXPONENT; k -= 1)
    powers[k - LOWEST_EXPONENT] = powers[k + 1 - LOWEST_EXPONENT]! / 2;
  return powers;
})();

/**
 * e to the power x, the same digits on every machine.
 *
 * @param x  any number but NaN
 * @returns e^x within one unit in the last place; 0 below -708, Infinity above 709.78
 * @throws RangeError on NaN
 * @source argument reduction and rational approximation of fdlibm's e_exp.c (Sun Microsystems, 1993)
 * @oracle Math.exp of the engine at hand, to 4e-16 relative
 * @example exp(0) // => 1
 */
export function exp(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('exp needs a number');
  if (x > 709.782712893384) return Infinity;
  if (x < -708) return 0;
  const k = Math.round(x * 1.4426950408889634);
  const high = x - k * LN2_HIGH;
  const low = k * LN2_LOW;
  const r = high - low;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.77777777770155933842e-3 +
            t *
              (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  const y = 1 - (low - (r * c) / (2 - c) - high);
  return k === 1024 ? y * 2 * powersOfTwo[1023 - LOWEST_EXPONENT]! : y * powersOfTwo[k - LOWEST_EXPONENT]!;
}

/**
 * Natural logarithm, the same digits on every machine.
 *
 * @param x  0 or more
 * @returns ln x within one unit in the last place; -Infinity at 0
 * @throws RangeError on NaN or a negative number
 * @source argument reduction and approximation of fdlibm's e_log.c (Sun Microsystems, 1993)
 * @oracle Math.log of the engine at hand, to 4e-16 relative
 * @example log(1) // => 0
 */
export function log(x: number): number {
  if (!(x >= 0)) throw new RangeError(`log needs a number of 0 or more, got ${x}`);
  if (x === 0) return -Infinity;
  if (x === Infinity) return Infinity;
  let k = 0;
  let m = x;
  for (; m >= 4294967296; k += 32) m /= 4294967296;
  for (; m < 1 / 4294967296; k -= 32) m *= 4294967296;
  for (; m >= Math.SQRT2; k += 1) m /= 2;
  for (; m < Math.SQRT1_2; k -= 1) m *= 2;
  const f = m - 1;
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (0.3999999999940941908 + w * (0.2222219843214978396 + w * 0.1531383769920937332));
  const odd =
    z *
    (0.666666666666673513 +
      w * (0.2857142874366239149 + w * (0.1818357216161805012 + w * 0.1479819860511658591)));
  const half = 0.5 * f * f;
  return k * LN2_HIGH - (half - (s * (half + even + odd) + k * LN2_LOW) - f);
}

/**
 * Logistic function 1 / (1 + e^-x), the same digits on every machine.
 *
 * @param x  any number but NaN
 * @returns a share from 0 to 1
 * @throws RangeError on NaN
 * @example logistic(0) // => 0.5
 */
export function logistic(x: number): number {
  if (x >= 0) return 1 / (1 + exp(-x));
  const e = exp(x);
  return e / (1 + e);
}
