/**
 * Standard uncertainty of a value known to lie within plus or minus `halfWidth`, all values alike: halfWidth / sqrt(3).
 *
 * @param halfWidth  not negative
 * @returns standard uncertainty in the same unit
 * @throws RangeError on a negative or non-finite number
 * @source JCGM 100:2008, 4.3.7
 * @example rectangularUncertainty(Math.sqrt(3)) // => 1
 */
export function rectangularUncertainty(halfWidth: number): number {
  return requireWidth(halfWidth, 'halfWidth') / Math.sqrt(3);
}

/**
 * Standard uncertainty of reading to the nearest step: step / sqrt(12).
 *
 * @param resolution  smallest step that is read, not negative
 * @returns standard uncertainty in the same unit
 * @throws RangeError on a negative or non-finite number
 * @source JCGM 100:2008, F.2.2.1
 * @example resolutionUncertainty(1) // => 0.2886751345948129
 */
export function resolutionUncertainty(resolution: number): number {
  return requireWidth(resolution, 'resolution') / Math.sqrt(12);
}

function requireWidth(value: number, name: string): number {
  if (!(value >= 0) || !Number.isFinite(value))
    throw new RangeError(`${name} is a finite number not below zero`);
  return value;
}
